package road

import (
	"context"
	"math"

	"github.com/paulmach/orb"
)

// A Detour is what it takes to call at a place from a course: leave it, drive there, and come back to it, no earlier than
// where it was left.
type Detour struct {
	Place   int // index of the spot asked for
	ExtraM  float64
	ExtraS  float64
	ThereM  float64 // from leaving the course to the place; the way back is ExtraM - ThereM + RejoinM - LeaveM
	LeaveM  float64 // from the start of the course
	RejoinM float64
	cost    int64 // by the router's aim
}

// DetourOptions limit the search. The zero value takes all places that can be reached and left again.
type DetourOptions struct {
	MaxExtraM float64 // more is no detour; 0: any
}

// Detours returns the best detour to each place from each leg of the course that passes within reach, by place, then along
// the course. A leg is a piece of the course that is itself a best way; a detour stays within one, so that it never leaves
// out what was drawn on purpose.
//
// Least is what the router's aim says; km and minutes are of that way, without the straight piece between a place and its road
// ([Spot.OffM]). Cost: two searches from all of a leg at once to all
// places, each over the ancestors of the leg's states and the places'. Places that cannot be reached or left are not listed.
func (q *Query) Detours(ctx context.Context, c Course, places []Spot, opt DetourOptions) ([]Detour, error) {
	if q.there == nil {
		q.there, q.back = newSweep(q.r, false), newSweep(q.r, true)
	}
	there, back := q.there, q.back
	m := newMeasures(q.r)
	var list []Detour
	at := make([]orb.Point, len(places))
	for i, p := range places {
		if q.r.Net.holds(p) {
			at[i] = q.r.Net.at[q.r.Net.from[p.Edge]].point()
		}
	}
	for _, leg := range q.legs(c) {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		var near []int
		for i, p := range places {
			if q.r.Net.holds(p) && (opt.MaxExtraM <= 0 || q.inReach(leg, at[i], opt.MaxExtraM+float64(q.r.Net.cm[p.Edge])/100)) {
				near = append(near, i)
			}
		}
		if len(near) > 0 {
			list = append(list, q.legDetours(leg, places, near, there, back, m)...)
		}
	}
	// Legs are in order along the course, so what is left is to put places in order.
	var sorted []Detour
	next := make([][]int, len(places))
	for i, d := range list {
		if opt.MaxExtraM <= 0 || d.ExtraM <= opt.MaxExtraM {
			next[d.Place] = append(next[d.Place], i)
		}
	}
	for _, own := range next {
		for _, i := range own {
			sorted = append(sorted, list[i])
		}
	}
	return sorted, nil
}

// inReach says that a point lies no farther from the leg than a detour of maxM could be: a generous box.
func (q *Query) inReach(leg []station, p orb.Point, maxM float64) bool {
	b := box{math.MaxInt32, math.MaxInt32, math.MinInt32, math.MinInt32}
	for _, s := range leg {
		state := s.state
		if state == none {
			state = q.r.Net.from[s.spot.Edge]
		}
		b = b.around(q.r.Net.at[state])
	}
	x := spotOf(p)
	dLat := maxM / 111195 * 1e7 * 1.01
	dLon := dLat / max(0.01, math.Cos(p[1]*math.Pi/180))
	return float64(x.lon) >= float64(b.minLon)-dLon && float64(x.lon) <= float64(b.maxLon)+dLon &&
		float64(x.lat) >= float64(b.minLat)-dLat && float64(x.lat) <= float64(b.maxLat)+dLat
}

// legDetours searches from and to all stations of a leg at once. With T the cost of the leg and t that of a station from its
// start, min(t + there) over stations plus min(T - t + back) less T is the best detour. That the course is left no later than
// it is joined needs no check: who joins before the place of leaving drives on along the leg to it, and so could have joined
// there.
func (q *Query) legDetours(leg []station, places []Spot, near []int, there, back *sweep, m *measures) (list []Detour) {
	total := uint32(min(leg[len(leg)-1].cost, maxCost))
	leave, join := map[uint32]int{}, map[uint32]int{} // state → station
	there.reset()
	back.reset()
	for i, s := range leg {
		t := uint32(min(s.cost, maxCost))
		for _, x := range q.leaving(s, q.starts[:0]) {
			if c := min(t+x.cost, noWay); c < there.dist[x.state] {
				there.put(x.state, c)
				leave[x.state] = i
			}
		}
		for _, x := range q.joining(s, q.finals[:0]) {
			if c := min(total-t+x.cost, noWay); c < back.dist[x.state] {
				back.put(x.state, c)
				join[x.state] = i
			}
		}
	}
	there.ties(leg, func(s station) uint32 { return uint32(min(s.cost, maxCost)) })
	back.ties(leg, func(s station) uint32 { return total - uint32(min(s.cost, maxCost)) })
	var to, from []uint32
	for _, i := range near {
		for _, x := range q.r.finals(places[i], q.finals[:0]) {
			to = append(to, x.state)
		}
		for _, x := range q.r.starts(places[i], q.starts[:0]) {
			from = append(from, x.state)
		}
	}
	there.run(to)
	back.run(from)
	for _, i := range near {
		a, ok1 := q.half(there, leg, places[i], leave, m, true)
		b, ok2 := q.half(back, leg, places[i], join, m, false)
		if !ok1 || !ok2 {
			continue
		}
		left, joined := leg[a.station], leg[b.station]
		// Who joins before the place of leaving drives along the course to it: the sums are the same.
		list = append(list, Detour{
			Place:   i,
			ExtraM:  (float64(a.cm+b.cm) - float64(joined.cm) + float64(left.cm)) / 100,
			ExtraS:  (float64(a.ms+b.ms) - float64(joined.ms) + float64(left.ms)) / 1000,
			ThereM:  float64(a.cm) / 100,
			LeaveM:  float64(left.cm) / 100,
			RejoinM: float64(max(left.cm, joined.cm)) / 100,
			cost:    int64(a.cost) + int64(b.cost) - int64(total),
		})
	}
	return list
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
		if i > 0 && i < len(leg)-1 || leg[i].state != none {
			continue
		}
		from, to, before := leg[i].spot, p, leg[i].cost
		if !ahead {
			from, to, before = p, leg[i].spot, leg[len(leg)-1].cost-leg[i].cost
		}
		if c, dir := r.along(from, to); c != noWay && uint64(c)+before < uint64(h.cost) {
			step := Step{dir, from.Cm, to.Cm}
			h.cost = c + uint32(before)
			h.station, h.measure = i, measure{uint64(step.cm()), r.stepMs(step)}
		}
	}
	// 2. Over the states at the ends of its edge.
	best, state := seed{}, none
	seeds := r.finals(p, q.finals[:0])
	if !ahead {
		seeds = r.starts(p, q.starts[:0])
	}
	for _, x := range seeds {
		if d := s.dist[x.state]; d != noWay && uint64(d)+uint64(x.cost) < uint64(h.cost) {
			h.cost, best, state = d+x.cost, x, x.state
		}
	}
	if state == none {
		return h, h.cost != noWay
	}
	last := Step{best.dir, r.Net.startCm(best.dir), p.Cm}
	if !ahead {
		last = Step{best.dir, p.Cm, r.Net.endCm(best.dir)}
	}
	h.measure = measure{uint64(last.cm()), r.stepMs(last)}
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
	if st := leg[h.station]; st.state == none {
		ends := q.leaving(st, q.starts[:0])
		if !ahead {
			ends = q.joining(st, q.finals[:0])
		}
		piece := Step{}
		least := uint32(noWay)
		for _, x := range ends {
			if x.state == state && x.cost < least {
				least = x.cost
				piece = Step{x.dir, st.spot.Cm, r.Net.endCm(x.dir)}
				if !ahead {
					piece = Step{x.dir, r.Net.startCm(x.dir), st.spot.Cm}
				}
			}
		}
		h.measure = h.measure.add(measure{uint64(piece.cm()), r.stepMs(piece)})
	}
	return h, true
}

// latest returns the last station on the way from a to b, which is a shortcut, where driving on along the leg has cost as much,
// and the measure from there to b. So the leg is left as late as can be, and joined as early. a is such a station, reached at
// a cost of d.
func (q *Query) latest(s *sweep, a, b, d uint32, m *measures, ahead bool) (i int, rest measure) {
	cost := func(x, y uint32) uint32 {
		arc := q.r.Net.cch.arcBetween(min(x, y), max(x, y))
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
	if mid == none {
		i, _ := s.tie(a, d)
		return i, measure{uint64(q.r.Net.cm[dir>>1]), uint64(q.r.ms(dir))}
	}
	if c := cost(a, mid); s.tied(mid, d+c) {
		return q.latest(s, mid, b, d+c, m, ahead)
	}
	i, rest = q.latest(s, a, mid, d, m, ahead)
	return i, rest.add(m.of(min(mid, b), max(mid, b), (mid < b) == ahead))
}
