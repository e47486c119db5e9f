package read

import (
	"slices"

	"ullage/geo"
	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/trip"
)

// entryM is how far from a place its road must be to be told apart: own choice.
const entryM = 30

// call reads one visit of a plan; closed is what becomes of the trip if the
// place is, nil if that was not looked into.
func (b reader) call(s *planner.Stop, v planner.Visit, closed *backup.Closure) trip.Call {
	at := b.Calls[s.ID]
	p, cand := at.Place, b.Candidates[at.Candidate]
	c := trip.Call{Place: p.ID, Stop: s.ID, Kind: p.Kind, Name: p.Name, Point: p.Point, Km: cand.Km, OffKm: cand.OffKm,
		DetourKm: s.DetourKm, DetourMin: s.DetourMin, ByRoad: cand.ByRoad, ArriveMin: v.Arrive.Min, LeaveMin: v.Leave.Min,
		Night: v.Night, Arrive: v.Arrive.Levels, Leave: v.Leave.Levels, Cost: s.Fee}
	if e := at.Entry; e != nil && geo.DistanceM(e.Point, p.Point) > entryM {
		c.Entry = e
	}
	if v.Night {
		c.Nights, c.Cost = s.Night.Nights, c.Cost+s.Night.Fee
	}
	for _, k := range b.Trip.Vehicle.Tanks {
		if t, ok := task(k, s, v); ok {
			c.Tasks, c.Cost = append(c.Tasks, t), c.Cost+t.Cost
		}
	}
	c.Facts = b.facts(s, p, c)
	c.HowTo = b.howTos(c)
	c.Cautions = b.cautionsOf(c)
	switch {
	case closed == nil:
	case closed.Survived:
		c.Fallback = b.fallback(s, v, closed)
	default:
		c.Cautions = slices.Insert(c.Cautions, 0, b.noWayOn(closed))
	}
	return c
}

// task is what a visit does to one tank; ok is false if nothing.
func task(k trip.Tank, s *planner.Stop, v planner.Visit) (t trip.Task, ok bool) {
	kind := trip.KindOfTank(k.ID)
	t = trip.Task{Tank: k.ID, Verb: kind.Verb, Unit: k.Unit, Before: v.Arrive.Levels[k.ID], After: v.Leave.Levels[k.ID]}
	if i := slices.IndexFunc(v.Serve, func(y planner.Serve) bool { return y.Tank == k.ID }); i >= 0 {
		x := s.Serves[slices.IndexFunc(s.Serves, func(x planner.Service) bool { return x.Tank == k.ID })]
		t.Amount = v.Serve[i].Amount
		t.Cost = x.Fee
		if k.Kind == planner.Supply {
			t.Cost += t.Amount * x.Price
		}
		return t, true
	}
	if kind.ByNight && v.Night && t.After > t.Before+planner.Tolerance {
		t.Amount = t.After - t.Before
		return t, true
	}
	return trip.Task{}, false
}
