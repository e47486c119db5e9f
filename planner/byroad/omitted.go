package byroad

import (
	"ullage/geo/road/net"
	"ullage/planner/fact"
)

// omitted says what is left out of a network, or counts as open, by reason: {n} of them.
var omitted = [net.Omissions]fact.Kind{
	net.UnsaidFerries:  "roads.omitted.ferries",
	net.ChangingRoads:  "roads.omitted.changing",
	net.RulesAtTimes:   "roads.omitted.rules",
	net.LeavesData:     "roads.omitted.leaves",
	net.TurnsAtTimes:   "roads.omitted.turns",
	net.UnfittingTurns: "roads.omitted.unfitting",
}

// Omitted says what a network leaves out, a fact for each reason that there is.
func Omitted(n *net.Network) []fact.Fact {
	var out []fact.Fact
	for why, count := range n.Omitted() {
		if count > 0 {
			out = append(out, fact.Of(omitted[why], fact.V{"n": fact.Count(count)}))
		}
	}
	return out
}
