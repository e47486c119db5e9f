package road

import (
	"ullage/geo/road/order"

	"ullage/geo/road/net"
)

// A tie is a state of a leg: the number of its station and what driving there along the leg costs.
type tie struct {
	station int
	cost    uint32
}

// ties remembers the states of a leg.
func (s *sweep) ties(leg []station, cost func(station) uint32) {
	s.on = make(map[uint32]tie, len(leg))
	for i, x := range leg {
		if x.state != order.None {
			s.on[x.state] = tie{i, cost(x)}
		}
	}
}

// tie returns the station of a state if driving there along the leg costs the same.
func (s *sweep) tie(state, cost uint32) (station int, ok bool) {
	t, ok := s.on[state]
	return t.station, ok && t.cost == cost
}

func (s *sweep) tied(state, cost uint32) bool {
	_, ok := s.tie(state, cost)
	return ok
}

// A halfway is the way from a station to a place, or back.
type halfway struct {
	station int
	cost    uint32
	measure
}

// half returns the way to a place (ahead) or from it.
func (q *Query) half(s *sweep, leg []station, p Spot, stations map[uint32]int, m *measures, ahead bool) (h halfway, ok bool) {
	r := q.r
	h.cost = noWay
	// 1. Straight along the edge from or to an end of the leg that lies on it.
	for i := range leg {
		if i > 0 && i < len(leg)-1 || leg[i].state != order.None {
			continue
		}
		from, to, before := leg[i].spot, p, leg[i].cost
		if !ahead {
			from, to, before = p, leg[i].spot, leg[len(leg)-1].cost-leg[i].cost
		}
		if c, dir := r.along(from, to); c != noWay && uint64(c)+before < uint64(h.cost) {
			step := net.Step{Dir: dir, FromCm: from.Cm, ToCm: to.Cm}
			h.cost = c + uint32(before)
			h.station, h.measure = i, measure{uint64(step.LengthCm()), r.stepMs(step)}
		}
	}
	// 2. Over the states at the ends of its edge.
	best, state := seed{}, order.None
	seeds := r.finals(p, q.finals[:0])
	if !ahead {
		seeds = r.starts(p, q.starts[:0])
	}
	for _, x := range seeds {
		if d := s.dist[x.state]; d != noWay && uint64(d)+uint64(x.cost) < uint64(h.cost) {
			h.cost, best, state = d+x.cost, x, x.state
		}
	}
	if state == order.None {
		return h, h.cost != noWay
	}
	last := net.Step{Dir: best.dir, FromCm: r.Net.StartCm(best.dir), ToCm: p.Cm}
	if !ahead {
		last = net.Step{Dir: best.dir, FromCm: p.Cm, ToCm: r.Net.EndCm(best.dir)}
	}
	h.measure = measure{uint64(last.LengthCm()), r.stepMs(last)}
	for {
		if i, ok := s.tie(state, s.dist[state]); ok {
			h.station = i
			return h, true
		}
		before := s.prev[state]
		if before == state {
			break
		}
		before &^= fromAbove
		if _, ok := s.tie(before, s.dist[before]); ok {
			i, rest := q.latest(s, before, state, s.dist[before], m, ahead)
			h.station, h.measure = i, h.measure.add(rest)
			return h, true
		}
		// Ahead, an arc from above is taken down; behind, it is taken up.
		h.measure = h.measure.add(m.of(min(before, state), max(before, state), (before < state) == ahead))
		state = before
	}
	h.station = stations[state]
	// 3. From a station that is a spot, the piece of its edge.
	if st := leg[h.station]; st.state == order.None {
		ends := q.leaving(st, q.starts[:0])
		if !ahead {
			ends = q.joining(st, q.finals[:0])
		}
		piece := net.Step{}
		least := uint32(noWay)
		for _, x := range ends {
			if x.state == state && x.cost < least {
				least = x.cost
				piece = net.Step{Dir: x.dir, FromCm: st.spot.Cm, ToCm: r.Net.EndCm(x.dir)}
				if !ahead {
					piece = net.Step{Dir: x.dir, FromCm: r.Net.StartCm(x.dir), ToCm: st.spot.Cm}
				}
			}
		}
		h.measure = h.measure.add(measure{uint64(piece.LengthCm()), r.stepMs(piece)})
	}
	return h, true
}

// latest returns the last station on the way from a to b, which is a shortcut, where driving on along the leg has cost as much,
// and the measure from there to b. So the leg is left as late as can be, and joined as early. a is such a station, reached at
// a cost of d.
func (q *Query) latest(s *sweep, a, b, d uint32, m *measures, ahead bool) (i int, rest measure) {
	cost := func(x, y uint32) uint32 {
		arc := q.r.Net.Hierarchy().ArcBetween(min(x, y), max(x, y))
		if (x < y) == ahead {
			return q.r.up[arc]
		}
		return q.r.down[arc]
	}
	if i, ok := s.tie(b, d+cost(a, b)); ok {
		return i, measure{}
	}
	up := (a < b) == ahead
	dir, mid := q.r.halves(min(a, b), max(a, b), up)
	if mid == order.None {
		i, _ := s.tie(a, d)
		return i, measure{uint64(q.r.Net.LengthCm(dir >> 1)), uint64(q.r.ms(dir))}
	}
	if c := cost(a, mid); s.tied(mid, d+c) {
		return q.latest(s, mid, b, d+c, m, ahead)
	}
	i, rest = q.latest(s, a, mid, d, m, ahead)
	return i, rest.add(m.of(min(mid, b), max(mid, b), (mid < b) == ahead))
}
