package build

import (
	"fmt"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// ferryEndKm: a ferry may end so far beyond the route; that is rounding.
const ferryEndKm = 0.1

// basisTrip: the trip itself says how long the ferry takes.
const basisTrip fact.Kind = "ferry.basis.trip"

// ferries are those that the trip names, and those that roads know where it
// names none. One that the route does not have is an error.
func ferries(t trip.Trip, lengthKm float64, known []trip.Crossing) ([]trip.Crossing, error) {
	var own, out []trip.Crossing
	for i, f := range t.Ferries {
		if f.ToKm > lengthKm+ferryEndKm {
			return nil, fmt.Errorf("trip: ferry %d runs from km %.1f to km %.1f, but the route ends at km %.1f: change or remove the ferry", i+1, f.FromKm, f.ToKm, lengthKm)
		}
		if f.ToKm = min(f.ToKm, lengthKm); f.FromKm < f.ToKm {
			own = append(own, trip.Crossing{Ferry: f, Basis: fact.Of(basisTrip, nil)})
		}
	}
	for _, f := range known { // both ascend
		f.FromKm, f.ToKm = max(f.FromKm, 0), min(f.ToKm, lengthKm)
		for len(own) > 0 && own[0].ToKm <= f.FromKm {
			out, own = append(out, own[0]), own[1:]
		}
		clash := len(own) > 0 && own[0].FromKm < f.ToKm
		if n := len(out); f.FromKm < f.ToKm && !clash && (n == 0 || out[n-1].ToKm <= f.FromKm) {
			out = append(out, f)
		}
	}
	out = append(out, own...)
	for i := range out {
		if out[i].FromKm < trip.Metre { // one metre holds both a late beginning and the ferry
			out[i].FromKm = 0
		}
	}
	return out, nil
}

// sailing puts the ferries into the pace along the route, on the planner's axis.
func sailing(a trip.Axis, roads []planner.Pace) []planner.Pace {
	if len(a.Ferries) == 0 {
		return roads
	}
	var out []planner.Pace
	at := 0.0 // along the route
	drive := func(to float64) {
		for _, p := range roads {
			if end := min(p.ToKm, to); end > at {
				out, at = append(out, planner.Pace{ToKm: a.Driven(end), MinPerKm: p.MinPerKm}), end
			}
		}
	}
	for _, f := range a.Ferries {
		drive(f.FromKm)
		out, at = append(out, planner.Pace{ToKm: f.At + trip.Metre, MinPerKm: f.Min / trip.Metre}), f.ToKm
	}
	drive(a.LengthKm)
	return out
}

// delayed lets so many minutes pass in the first metre.
func delayed(pace []planner.Pace, late float64) []planner.Pace {
	first := planner.Drive{Pace: pace}.Minutes(0, trip.Metre) + late
	out := []planner.Pace{{ToKm: trip.Metre, MinPerKm: first / trip.Metre}}
	for _, p := range pace {
		if p.ToKm > trip.Metre {
			out = append(out, p)
		}
	}
	return out
}
