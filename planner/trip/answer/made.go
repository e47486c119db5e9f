package answer

import (
	"cmp"
	"fmt"
	"slices"

	"ullage/planner"
	"ullage/planner/trip"
)

// This file adds places to a problem that nobody knows of, to see whether such a
// place is what is missing.

// A need is what a place can do for a trip: see to a tank, or take it for the night.
type need struct {
	tank string // "": a night
}

// met says whether some stop of a problem meets a need.
func (n need) met(p *planner.Problem) bool {
	return slices.ContainsFunc(p.Stops, func(s planner.Stop) bool {
		if n.tank == "" {
			return s.Night != nil
		}
		return s.Night != nil && s.Night.Use[n.tank] < 0 || slices.ContainsFunc(s.Serves, func(x planner.Service) bool { return x.Tank == n.tank })
	})
}

// madeSpots is at how many positions along a route a place is tried.
const madeSpots = 13

// What a call at a made up place takes: like one beside the road. Own choice.
const madeDetourKm, madeDetourMin, madeStopMin = 1, 2, 4

// spots are positions along the planner's axis at which places are made up: as
// many as nights need, at least.
func (b asker) spots() []float64 {
	n := madeSpots
	if r := b.Problem.Nights; r != nil {
		n = max(n, min(r.Min+2, 60))
	}
	out := make([]float64, n)
	for i := range out {
		out[i] = min(b.Problem.LengthKm*float64(i)/float64(n-1), b.Problem.LengthKm) // rounding is not beyond the end
	}
	return out
}

// with is the problem with a place for each need at each position, and with places for
// the night that meet them all.
func (b asker) with(needs []need, spots []float64) *planner.Problem {
	q := b.Problem.Clone()
	for i, km := range spots {
		for _, n := range needs {
			if !trip.KindOfTank(n.tank).ByNight {
				q.Stops = append(q.Stops, b.made(n, km, i))
			}
		}
	}
	for _, n := range needs {
		b.equip(q, n)
	}
	slices.SortStableFunc(q.Stops, func(a, b planner.Stop) int { return cmp.Compare(a.Km, b.Km) })
	return q
}

// onto is a problem with one place more.
func (b asker) onto(p *planner.Problem, n need, km float64) *planner.Problem {
	q := p.Clone()
	q.Stops = append(q.Stops, b.made(n, km, len(q.Stops)))
	slices.SortStableFunc(q.Stops, func(a, b planner.Stop) int { return cmp.Compare(a.Km, b.Km) })
	return q
}

// made is a place without a fee beside the route that meets one need.
func (b asker) made(n need, km float64, number int) planner.Stop {
	s := planner.Stop{ID: fmt.Sprintf("made up %s %d", n.tank, number), Km: km, DetourKm: madeDetourKm, DetourMin: madeDetourMin, StopMin: madeStopMin, Serves: []planner.Service{}}
	if n.tank == "" {
		place := b.unknown(km)
		place.Stay.HookUp, place.Stay.Fee = b.hookUp(), trip.No
		s.Night = b.Nights(place, b.Axis.Route(km), 1)
		return s
	}
	s.Serves = append(s.Serves, b.service(n))
	return s
}

// service is what meets the need of a tank.
func (b asker) service(n need) planner.Service {
	x := planner.Service{Tank: n.tank, Min: trip.KindOfTank(n.tank).Minutes}
	if i := slices.IndexFunc(b.Problem.Tanks, func(t planner.Tank) bool { return t.ID == n.tank }); b.Problem.Tanks[i].Kind == planner.Supply {
		x.Price, _ = b.Trip.Price(n.tank)
	}
	if m := b.Problem.Mass; m != nil && m.Per[n.tank] > 0 {
		x.Price = 0 // its mass is a limit: see [build.Tanks]
	}
	return x
}

// hookUp is what a place must have for the wishes of the trip.
func (b asker) hookUp() trip.Answer {
	if b.Trip.Stays.HookUp {
		return trip.Yes
	}
	return trip.Unknown
}

// equip lets every place for the night meet a need.
func (b asker) equip(q *planner.Problem, n need) {
	for i := range q.Stops {
		s := &q.Stops[i]
		switch {
		case s.Night == nil || !trip.KindOfTank(n.tank).AtSites:
		case trip.KindOfTank(n.tank).ByNight:
			b.plugIn(s)
		case !slices.ContainsFunc(s.Serves, func(x planner.Service) bool { return x.Tank == n.tank }):
			x := b.service(n)
			x.GuestsOnly = true
			s.Serves = append(slices.Clip(s.Serves), x)
		}
	}
}

// plugIn gives a place for the night hook-up.
func (b asker) plugIn(s *planner.Stop) {
	place := *b.unknown(s.Km)
	if c, known := b.Calls[s.ID]; known {
		place = *c.Place
	}
	stay := *place.Stay
	stay.HookUp, place.Stay = trip.Yes, &stay
	fee := s.Night.Fee
	s.Night = b.Nights(&place, b.Axis.Route(s.Km), s.Night.Nights)
	s.Night.Fee = fee
}

// unknown is a place for the night of which nothing is known, at a km of the planner's.
func (b asker) unknown(km float64) *trip.Place {
	at := b.Trip.Route[int(float64(len(b.Trip.Route)-1)*km/b.Problem.LengthKm)]
	return &trip.Place{Kind: trip.Stopover, Point: at, Stay: &trip.Stay{}}
}
