package net

// Onward counts the ways over which a turn is forbidden, Doubts the turns forbidden at times.
func Onward(n *Network) int { return len(n.onward) }
func Doubts(n *Network) int { return len(n.doubts) }
