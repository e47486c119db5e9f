package read

import (
	"slices"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
)

// LimitMap is the limit of a refusal that lies in the map data, not in the trip.
const LimitMap = "map"

// Why is the reasons of a refusal along the route, with what would cure each.
func Why(b *build.Built, reasons []planner.Reason) []trip.Reason {
	var out []trip.Reason
	for _, r := range reasons {
		if len(reasons) > 1 && r.Missing > 0 && r.Missing < 0.05 {
			continue // a limit that is met to the digit shown is no news
		}
		r.FromKm, r.ToKm = b.Axis.Route(r.FromKm), b.Axis.Route(r.ToKm)
		w := trip.Reason{Reason: r, Cause: causeOf(r), Says: r.Fact(b.Problem)}
		if c, ok := b.Calls[r.Limit]; ok {
			w.Says = fact.Of(w.Says.Kind, fact.V{"stop": c.Place.Called()})
		}
		for _, c := range r.Changes {
			w.Cures = append(w.Cures, c.Fact(b.Problem, b.Trip.Currency))
		}
		out = append(out, w)
	}
	trip.ByCause(out)
	return out
}

// wished are the kinds of what the travellers want; the nights of a trip are.
var wished = []fact.Kind{planner.ReasonDayKm, planner.ReasonDayMin, planner.ReasonNightsMore, planner.ReasonNightsLess, planner.ReasonStop, planner.ReasonOpen, planner.ReasonBackup}

// causeOf is what a reason lies in.
func causeOf(r planner.Reason) trip.Cause {
	switch {
	case r.Kind == planner.ReasonEnd:
		return trip.CauseAgreement
	case slices.Contains(wished, r.Kind):
		return trip.CauseWish
	}
	return trip.CauseTank
}
