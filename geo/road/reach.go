package road

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
