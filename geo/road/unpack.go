package road

import (
	"slices"

	"ullage/geo/road/net"
	"ullage/geo/road/order"
)

// This file turns arcs of the hierarchy back into roads.

// A measure is the length and the time of a way.
type measure struct{ cm, ms uint64 }

func (a measure) add(b measure) measure { return measure{a.cm + b.cm, a.ms + b.ms} }

func (r *Router) measureOf(s net.Step) measure { return measure{uint64(s.LengthCm()), r.stepMs(s)} }

// Measures remember the measure of shortcuts: detours share most of them.
type measures struct {
	r     *Router
	known map[uint64]measure // by arc<<1, plus 1 if taken up
}

func newMeasures(r *Router) *measures { return &measures{r, map[uint64]measure{}} }

// of returns the measure of the best way from one state to its neighbour in the hierarchy.
func (m *measures) of(from, to uint32) measure {
	key := uint64(m.r.Net.Hierarchy().ArcBetween(min(from, to), max(from, to))) << 1
	if from < to {
		key |= 1
	}
	if x, ok := m.known[key]; ok {
		return x
	}
	var x measure
	if dir, mid := m.r.halves(from, to); mid == order.None {
		x = m.r.measureOf(m.r.Net.Whole(dir))
	} else {
		x = m.of(from, mid).add(m.of(mid, to))
	}
	m.known[key] = x
	return x
}

// unpackTo appends the edges from the seed of the search ahead to a state.
func (q *Query) unpackTo(s uint32, steps []net.Step) []net.Step {
	if p := q.ahead.prev[s]; p != s {
		steps = q.unpackTo(p, steps)
		q.r.unpack(p, s, func(dir uint32) { steps = append(steps, q.r.Net.Whole(dir)) })
	}
	return steps
}

// unpackFrom appends the edges from a state to the seed of the search behind.
func (q *Query) unpackFrom(s uint32, steps []net.Step) []net.Step {
	for p := q.behind.prev[s]; p != s; p = q.behind.prev[s] {
		q.r.unpack(s, p, func(dir uint32) { steps = append(steps, q.r.Net.Whole(dir)) })
		s = p
	}
	return steps
}

// unpack calls fn with the directions driven from one state to another that is its neighbour in the hierarchy.
func (r *Router) unpack(from, to uint32, fn func(dir uint32)) {
	dir, mid := r.halves(from, to)
	if mid == order.None {
		fn(dir)
		return
	}
	r.unpack(from, mid, fn)
	r.unpack(mid, to, fn)
}

// neighbourCost is the cost from one state to another that is its neighbour in the hierarchy.
func (r *Router) neighbourCost(from, to uint32) uint32 {
	if from < to {
		return r.up[r.Net.Hierarchy().ArcBetween(from, to)]
	}
	return r.down[r.Net.Hierarchy().ArcBetween(to, from)]
}

// halves returns the road from one state to its neighbour in the hierarchy that has the arc's cost, or the state below both
// through which the way goes; then mid is not [order.None].
func (r *Router) halves(from, to uint32) (dir, mid uint32) {
	n, h := r.Net, r.Net.Hierarchy()
	cost := r.neighbourCost(from, to)
	for x, end := n.Arcs(from); x < end; x++ {
		if n.Head(x) == to && r.arcCost(x) == cost {
			return n.Dir(x), order.None
		}
	}
	low, high, first, second := from, to, r.down, r.up // from the lower state down, and up to the higher
	if from > to {
		low, high, first, second = to, from, r.up, r.down
	}
	// The lower list is the shorter one by far; most of it costs too much already.
	for i := h.DownFirst[low]; i < h.DownFirst[low+1]; i++ {
		x, v := h.DownArc[i], h.DownTail[i]
		half := first[x]
		if half >= cost {
			continue
		}
		k, ok := slices.BinarySearch(h.UpHead[x+1:h.UpFirst[v+1]], high)
		if ok && half+second[x+1+uint32(k)] == cost {
			return 0, v
		}
	}
	panic("road: an arc of the hierarchy without roads")
}
