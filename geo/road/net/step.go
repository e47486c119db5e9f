package net

import "github.com/paulmach/orb"

// A Step is a piece of road driven in one direction: Dir is edge<<1, plus 1 against the edge. Then FromCm ≥ ToCm, else FromCm ≤
// ToCm; both are at most the edge's length.
type Step struct {
	Dir          uint32
	FromCm, ToCm uint32 // positions on the edge
}

// Edge returns the edge of the step.
func (s Step) Edge() uint32 { return s.Dir >> 1 }

// LengthCm is the length of a step.
func (s Step) LengthCm() uint32 { return max(s.FromCm, s.ToCm) - min(s.FromCm, s.ToCm) }

// Whole returns the step along an entire edge.
func (n *Network) Whole(dir uint32) Step { return Step{dir, n.StartCm(dir), n.EndCm(dir)} }

// StartCm is the position on its edge where a direction begins, EndCm where it ends. They panic if there is no such edge.
func (n *Network) StartCm(dir uint32) uint32 {
	if dir&1 == 0 {
		return 0
	}
	return n.cm[dir>>1]
}

func (n *Network) EndCm(dir uint32) uint32 { return n.StartCm(dir ^ 1) }

// Line returns the line of steps that follow each other, without repeated points; nil for no
// steps. It panics for a step of another network. Cost linear in the points.
func (n *Network) Line(steps []Step) orb.LineString {
	var ls orb.LineString
	for _, s := range steps {
		for _, pt := range n.StepLine(s) {
			if len(ls) == 0 || ls[len(ls)-1] != pt {
				ls = append(ls, pt)
			}
		}
	}
	return ls
}

// StepLine returns the line of a step in the direction driven.
func (n *Network) StepLine(s Step) orb.LineString {
	list := n.Points(s.Edge())
	lo, hi := min(s.FromCm, s.ToCm), max(s.FromCm, s.ToCm)
	ls := LineOf(list)
	if lo > 0 || hi < n.cm[s.Edge()] {
		ls = between(ls, lo, hi, n.cm[s.Edge()])
	}
	if s.Dir&1 == 1 {
		ls.Reverse()
	}
	return ls
}

// PointAt returns the point of an edge that is cm centimetres from its start, at most its length. It panics if there is no
// such edge.
func (n *Network) PointAt(edge, cm uint32) orb.Point {
	return between(LineOf(n.Points(edge)), cm, cm, n.cm[edge])[0]
}
