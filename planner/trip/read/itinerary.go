package read

import (
	"slices"

	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
)

// Itinerary reads a plan of the problem as people do. The plan must be one that
// [audit.Check] passed; closures say what becomes of the trip if a stop of it is closed, nil: not
// looked into. An infeasible plan gives an itinerary without days that says why.
func Itinerary(built *build.Built, plan planner.Plan, closures []backup.Closure) trip.Itinerary {
	b := reader{built}
	it := trip.Itinerary{Name: b.Trip.Name, Status: plan.Status, Currency: b.Trip.Currency, Cost: plan.Cost, Bound: plan.Bound,
		LengthKm: b.Axis.LengthKm, Places: slices.Clone(b.Candidates), Estimated: true, OffRoad: b.OnRoads.Off, Confidence: b.Trip.Confident(), Weight: b.Weight, Done: b.Trip.Done, DoneKm: b.Trip.DoneKm}
	for _, w := range b.Trip.Wishes {
		it.Wishes = append(it.Wishes, w.Says(b.placed))
	}
	if plan.End == nil {
		it.Cautions = b.cautions(wayCaution(nil, b.Candidates))
		if plan.Status == planner.Infeasible {
			it.Why = Why(built, plan.Why)
		}
		return it
	}
	if plan.Parts != nil {
		it.Parts = *plan.Parts
	}
	stops := b.stops()
	it.Days = b.days(plan, stops, byStop(closures))
	b.here(it.Days, *plan.End)
	it.Strips = b.strips(plan, stops)
	estimated, _ := estimates(it.Days)
	it.Estimated = estimated > 0 || len(plan.Visits) == 0
	it.Counts = b.counts()
	it.Return = b.handBack(plan, it.Days)
	b.instructions(&it, moment{frost: b.frosty(plan)})
	it.Cautions = slices.Concat(b.missing(plan), b.cautions(wayCaution(it.Days, nil)), longDays(it.Days), shortMoves(it.Days))
	for _, v := range plan.Visits {
		it.Places[b.Calls[v.Stop].Candidate].Chosen = true
	}
	return it
}
