package read

import (
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
		w := trip.Reason{Reason: r, Says: r.Fact(b.Problem)}
		if c, ok := b.Calls[r.Limit]; ok {
			w.Says = fact.Of(w.Says.Kind, fact.V{"stop": c.Place.Called()})
		}
		for _, c := range r.Changes {
			w.Cures = append(w.Cures, c.Fact(b.Problem, b.Trip.Currency))
		}
		out = append(out, w)
	}
	return out
}
