package road

import (
	"slices"
	"ullage/geo/road/order"

	"ullage/geo/road/net"
)

// This file turns arcs of the hierarchy back into roads.

// unpackTo appends the edges from the seed of the search ahead to a state.
func (q *Query) unpackTo(s uint32, steps []net.Step) []net.Step {
	if p := q.ahead.prev[s]; p != s {
		steps = q.unpackTo(p, steps)
		q.r.unpack(p, s, true, func(dir uint32) { steps = append(steps, q.r.Net.Whole(dir)) })
	}
	return steps
}

// unpackFrom appends the edges from a state to the seed of the search behind.
func (q *Query) unpackFrom(s uint32, steps []net.Step) []net.Step {
	for p := q.behind.prev[s]; p != s; p = q.behind.prev[s] {
		q.r.unpack(p, s, false, func(dir uint32) { steps = append(steps, q.r.Net.Whole(dir)) })
		s = p
	}
	return steps
}

// unpack calls fn with the directions driven from the lower state to the upper, or with up false from the upper to the lower.
func (r *Router) unpack(low, high uint32, up bool, fn func(dir uint32)) {
	if dir, mid := r.halves(low, high, up); mid == order.None {
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
	n, h := r.Net, r.Net.Hierarchy()
	a := h.ArcBetween(low, high)
	cost, from, to := r.up[a], low, high
	if !up {
		cost, from, to = r.down[a], high, low
	}
	lo, hi := n.Arcs(from)
	for x := lo; x < hi; x++ {
		if n.Head(x) == to && r.arcCost(x) == cost {
			return n.Dir(x), order.None
		}
	}
	// The lower list is the shorter one by far; most of it costs too much already.
	for i := h.DownFirst[low]; i < h.DownFirst[low+1]; i++ {
		x, v := h.DownArc[i], h.DownTail[i]
		half := r.down[x]
		if !up {
			half = r.up[x]
		}
		if half >= cost {
			continue
		}
		k, ok := slices.BinarySearch(h.UpHead[x+1:h.UpFirst[v+1]], high)
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

// A measure is the length and the time of a way.
type measure struct{ cm, ms uint64 }

func (a measure) add(b measure) measure { return measure{a.cm + b.cm, a.ms + b.ms} }

// Measures remember the measure of shortcuts: detours share most of them.
type measures struct {
	r     *Router
	known map[uint64]measure // by arc<<1, plus 1 if taken up
}

func newMeasures(r *Router) *measures { return &measures{r, map[uint64]measure{}} }

// of returns the measure of the best way between two neighbours of the hierarchy.
func (m *measures) of(low, high uint32, up bool) measure {
	key := uint64(m.r.Net.Hierarchy().ArcBetween(low, high)) << 1
	if up {
		key |= 1
	}
	if x, ok := m.known[key]; ok {
		return x
	}
	var x measure
	if dir, mid := m.r.halves(low, high, up); mid == order.None {
		x = measure{uint64(m.r.Net.LengthCm(dir >> 1)), uint64(m.r.ms(dir))}
	} else if up {
		x = m.of(mid, low, false).add(m.of(mid, high, true))
	} else {
		x = m.of(mid, high, false).add(m.of(mid, low, true))
	}
	m.known[key] = x
	return x
}
