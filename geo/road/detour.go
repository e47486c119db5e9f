package road

import (
	"context"
	"math"
	"slices"

	"github.com/paulmach/orb"

	"ullage/geo/road/net"
	"ullage/geo/road/order"
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
	known := newMeasures(q.r)
	byPlace := make([][]Detour, len(places)) // legs are in order along the course
	for _, leg := range q.legs(c) {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		near := q.nearLeg(leg, places, opt)
		if len(near) == 0 {
			continue
		}
		for _, d := range q.legDetours(leg, places, near, known) {
			if opt.MaxExtraM <= 0 || d.ExtraM <= opt.MaxExtraM {
				byPlace[d.Place] = append(byPlace[d.Place], d)
			}
		}
	}
	return slices.Concat(byPlace...), nil
}

// nearLeg lists the places that a detour from a leg may reach.
func (q *Query) nearLeg(leg []station, places []Spot, opt DetourOptions) (near []int) {
	n := q.r.Net
	around := q.boxOf(leg)
	for i, p := range places {
		if !p.isOn(n) {
			continue
		}
		start := n.Pos(n.From(p.Edge)).Point()
		if opt.MaxExtraM <= 0 || inReach(around, start, opt.MaxExtraM+float64(n.LengthCm(p.Edge))/100) {
			near = append(near, i)
		}
	}
	return near
}

// boxOf is a box around a leg.
func (q *Query) boxOf(leg []station) net.Box {
	b := net.Nowhere
	for _, s := range leg {
		state := s.state
		if state == order.None {
			state = q.r.Net.From(s.spot.Edge)
		}
		b = b.Around(q.r.Net.Pos(state))
	}
	return b
}

// inReach says that a point lies no farther from a box than a detour of maxM could be.
func inReach(b net.Box, p orb.Point, maxM float64) bool {
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
func (q *Query) legDetours(leg []station, places []Spot, near []int, known *measures) (list []Detour) {
	total := min(leg[len(leg)-1].cost, net.MaxCost)
	there, back := q.newSide(ahead, leg, known), q.newSide(behind, leg, known)
	there.search(places, near)
	back.search(places, near)
	for _, i := range near {
		a, ok1 := there.way(places[i])
		b, ok2 := back.way(places[i])
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
