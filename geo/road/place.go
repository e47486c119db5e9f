package road

import (
	"github.com/paulmach/orb"

	"ullage/geo/road/net"
)

// A Spot is a position on an edge of a network: where a vehicle leaves the road to a place, or a click on it. The zero value
// is no position: OK is false. It holds for the network that gave it only; one of another network is taken for another place or
// for none.
type Spot struct {
	OK   bool
	Edge uint32
	Cm   uint32  // from the edge's start, at most its length
	OffM float64 // straight distance from what was asked for
	In   bool    // within the outline of the site asked for
}

// Point returns where a spot of the network is. It panics for a spot that is not on it: ask OK first.
func (s Spot) Point(n *net.Network) orb.Point { return n.PointAt(s.Edge, s.Cm) }

// isOn says that a spot is on the network.
func (s Spot) isOn(n *net.Network) bool {
	return s.OK && int(s.Edge) < n.Edges() && s.Cm <= n.LengthCm(s.Edge)
}

// into returns the cost from the beginning of a direction to the spot, out the cost from it to the end; they add up to the
// whole. noWay if the direction is closed.
func (r *Router) into(s Spot, back uint32) uint32 {
	whole := r.cost[s.Edge<<1|back]
	if whole == noWay {
		return noWay
	}
	part := uint32(uint64(whole) * uint64(s.Cm) / uint64(r.Net.LengthCm(s.Edge)))
	if back == 1 {
		return whole - part
	}
	return part
}

func (r *Router) out(s Spot, back uint32) uint32 {
	whole := r.cost[s.Edge<<1|back]
	if whole == noWay {
		return noWay
	}
	return whole - r.into(s, back)
}

// A seed is a state with the cost to reach it.
type seed struct {
	state, cost uint32
	dir         uint32 // the direction driven to it, or from it
}

// starts lists the states first reached from a spot.
func (r *Router) starts(s Spot, list []seed) []seed {
	for back := range uint32(2) {
		if c := r.out(s, back); c != noWay {
			dir := s.Edge<<1 | back
			if state, ok := r.Net.Arrival(dir); ok {
				list = append(list, seed{state, c, dir})
			}
		}
	}
	return list
}

// finals lists the states from which a spot's edge may be entered.
func (r *Router) finals(s Spot, list []seed) []seed {
	n := r.Net
	for back := range uint32(2) {
		c := r.into(s, back)
		if c == noWay {
			continue
		}
		dir := s.Edge<<1 | back
		plain := n.TailOf(dir)
		if _, ok := n.Arrival(dir); !ok {
			continue
		}
		list = append(list, seed{plain, c, dir})
		for _, x := range n.Comings(plain) {
			lo, hi := n.Arcs(x.State)
			for a := lo; a < hi; a++ {
				if n.Dir(a) == dir && r.arcCost(a) != noWay {
					list = append(list, seed{x.State, c, dir})
				}
			}
		}
	}
	return list
}

// along returns the cost between two spots of one edge without leaving it, and the direction.
func (r *Router) along(from, to Spot) (cost, dir uint32) {
	if from.Edge != to.Edge {
		return noWay, 0
	}
	cost = noWay
	for back := range uint32(2) {
		ahead := from.Cm <= to.Cm
		if back == 1 {
			ahead = from.Cm >= to.Cm
		}
		if a, b := r.into(from, back), r.into(to, back); ahead && a != noWay && b-a < cost {
			cost, dir = b-a, from.Edge<<1|back
		}
	}
	return cost, dir
}
