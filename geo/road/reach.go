package road

import "ullage/geo/road/net"

// A heading is the direction of a search: ahead along the driving, behind against it.
type heading uint8

const (
	ahead heading = iota
	behind
)

func (h heading) other() heading { return 1 - h }

// driven puts two states that a search passes in this order into that of driving.
func (h heading) driven(before, after uint32) (from, to uint32) {
	if h == ahead {
		return before, after
	}
	return after, before
}

// piece is the part of an edge from the beginning of a direction to a position, or behind from there to its end.
func (h heading) piece(n *net.Network, dir, cm uint32) net.Step {
	if h == ahead {
		return net.Step{Dir: dir, FromCm: n.StartCm(dir), ToCm: cm}
	}
	return net.Step{Dir: dir, FromCm: cm, ToCm: n.EndCm(dir)}
}

// A reach is how far the states are that a search has seen. Only what it has seen differs from noWay.
type reach struct {
	dist []uint32
	prev []uint32 // the lower state from where it was reached; itself at a seed
}

func newReach(states int) reach {
	x := reach{make([]uint32, states), make([]uint32, states)}
	for i := range x.dist {
		x.dist[i] = noWay
	}
	return x
}

// put makes a state a seed.
func (x *reach) put(s, cost uint32) {
	if cost < x.dist[s] {
		x.dist[s], x.prev[s] = cost, s
	}
}

func (x *reach) relax(s, d uint32, heads, costs []uint32) {
	costs = costs[:len(heads)]
	for i, t := range heads {
		if c := d + costs[i]; c < x.dist[t] {
			x.dist[t], x.prev[t] = c, s
		}
	}
}
