package read

import (
	"slices"

	"ullage/geo"
	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/life"
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
		DetourKm: s.DetourKm, DetourMin: s.DetourMin, ByRoad: cand.ByRoad, ArriveMin: v.Arrive.Min, LeaveMin: v.Leave.Min, InHandMin: v.InHand, LeaveKg: b.kg(v.Leave.Levels), Contact: p.Contact, Notes: p.Notes,
		Night: v.Night, Arrive: v.Arrive.Levels, Leave: v.Leave.Levels, Cost: s.Fee}
	if e := at.Entry; e != nil && geo.DistanceM(e.Point, p.Point) > entryM {
		c.Entry = e
	}
	if v.Night {
		c.Nights, c.Cost = s.Night.Nights, c.Cost+s.Night.Fee
	}
	for _, k := range b.Trip.Vehicle.Tanks {
		for _, t := range b.tasks(k, s, v) {
			c.Tasks, c.Cost = append(c.Tasks, t), c.Cost+t.Cost
		}
	}
	slices.SortStableFunc(c.Tasks, func(a, b trip.Task) int { return a.Night - b.Night })
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

// kg is what the scales show with levels; 0 where that is not known.
func (b reader) kg(levels map[string]float64) float64 {
	if b.Weight == nil {
		return 0
	}
	kg := b.Weight.Kg
	for _, k := range b.Trip.Vehicle.Tanks {
		kg += life.KgPer(k.ID) * (levels[k.ID] - b.Trip.LevelOf(k))
	}
	return kg
}
