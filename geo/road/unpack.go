package road

import "slices"

// This file turns arcs of the hierarchy back into roads.

// unpackTo appends the edges from the seed of the search ahead to a state.
func (q *Query) unpackTo(s uint32, steps []Step) []Step {
	if p := q.ahead.prev[s]; p != s {
		steps = q.unpackTo(p, steps)
		q.r.unpack(p, s, true, func(dir uint32) { steps = append(steps, q.r.Net.whole(dir)) })
	}
	return steps
}

// unpackFrom appends the edges from a state to the seed of the search behind.
func (q *Query) unpackFrom(s uint32, steps []Step) []Step {
	for p := q.behind.prev[s]; p != s; p = q.behind.prev[s] {
		q.r.unpack(p, s, false, func(dir uint32) { steps = append(steps, q.r.Net.whole(dir)) })
		s = p
	}
	return steps
}

// unpack calls fn with the directions driven from the lower state to the upper, or with up false from the upper to the lower.
func (r *Router) unpack(low, high uint32, up bool, fn func(dir uint32)) {
	if dir, mid := r.halves(low, high, up); mid == none {
		fn(dir)
	} else if up {
		r.unpack(mid, low, false, fn)
		r.unpack(mid, high, true, fn)
	} else {
		r.unpack(mid, high, false, fn)
		r.unpack(mid, low, true, fn)
	}
}

// halves returns the road between two states that has the arc's cost, or the state below both through which it goes.
func (r *Router) halves(low, high uint32, up bool) (dir, mid uint32) {
	n, h := r.Net, &r.Net.cch
	a := h.arcBetween(low, high)
	cost, from, to := r.up[a], low, high
	if !up {
		cost, from, to = r.down[a], high, low
	}
	lo, hi := n.arcs(from)
	for x := lo; x < hi; x++ {
		if n.head[x] == to && r.arcCost(x) == cost {
			return n.edge[x] &^ heavyOnly, none
		}
	}
	// The lower list is the shorter one by far; most of it costs too much already.
	for i := h.downFirst[low]; i < h.downFirst[low+1]; i++ {
		x, v := h.downArc[i], h.downTail[i]
		half := r.down[x]
		if !up {
			half = r.up[x]
		}
		if half >= cost {
			continue
		}
		k, ok := slices.BinarySearch(h.upHead[x+1:h.upFirst[v+1]], high)
		if !ok {
			continue
		}
		y := x + 1 + uint32(k)
		if up && half+r.up[y] == cost || !up && half+r.down[y] == cost {
			return 0, v
		}
	}
	panic("road: an arc of the hierarchy without roads")
}

// whole is the step along an entire edge.
func (n *Network) whole(dir uint32) Step { return Step{dir, n.startCm(dir), n.endCm(dir)} }

// startCm is the position on its edge where a direction begins, endCm where it ends.
func (n *Network) startCm(dir uint32) uint32 {
	if dir&1 == 0 {
		return 0
	}
	return n.cm[dir>>1]
}

func (n *Network) endCm(dir uint32) uint32 { return n.startCm(dir ^ 1) }
