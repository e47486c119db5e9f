package road

import (
	"context"
	"math"

	"github.com/paulmach/orb"

	"ullage/geo/road/order"

	"ullage/geo/road/net"
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
		if p.isOn(q.r.Net) {
			at[i] = q.r.Net.Pos(q.r.Net.From(p.Edge)).Point()
		}
	}
	for _, leg := range q.legs(c) {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		var near []int
		for i, p := range places {
			if p.isOn(q.r.Net) && (opt.MaxExtraM <= 0 || q.inReach(leg, at[i], opt.MaxExtraM+float64(q.r.Net.LengthCm(p.Edge))/100)) {
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
	b := net.Nowhere
	for _, s := range leg {
		state := s.state
		if state == order.None {
			state = q.r.Net.From(s.spot.Edge)
		}
		b = b.Around(q.r.Net.Pos(state))
	}
	x := net.PosOf(p)
	dLat := maxM / 111195 * 1e7 * 1.01
	dLon := dLat / max(0.01, math.Cos(p[1]*math.Pi/180))
	return float64(x.Lon) >= float64(b.MinLon)-dLon && float64(x.Lon) <= float64(b.MaxLon)+dLon &&
		float64(x.Lat) >= float64(b.MinLat)-dLat && float64(x.Lat) <= float64(b.MaxLat)+dLat
}

// legDetours searches from and to all stations of a leg at once. With T the cost of the leg and t that of a station from its
// start, min(t + there) over stations plus min(T - t + back) less T is the best detour. That the course is left no later than
// it is joined needs no check: who joins before the place of leaving drives on along the leg to it, and so could have joined
// there.
func (q *Query) legDetours(leg []station, places []Spot, near []int, there, back *sweep, m *measures) (list []Detour) {
	total := uint32(min(leg[len(leg)-1].cost, net.MaxCost))
	leave, join := map[uint32]int{}, map[uint32]int{} // state → station
	there.reset()
	back.reset()
	for i, s := range leg {
		t := uint32(min(s.cost, net.MaxCost))
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
	there.ties(leg, func(s station) uint32 { return uint32(min(s.cost, net.MaxCost)) })
	back.ties(leg, func(s station) uint32 { return total - uint32(min(s.cost, net.MaxCost)) })
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
