package build

import (
	"fmt"
	"math"

	"github.com/paulmach/orb"

	"ullage/geo"
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

// sail gives the problem the planner's axis and clock: the roads' pace with
// ferries in it, and a beginning that may be later than the usual departure.
func (b *Built) sail() error {
	ferries, err := ferries(b.Trip, b.Axis.LengthKm, b.Course.Ferries)
	if err != nil {
		return err
	}
	b.Axis = trip.NewAxis(b.Axis.LengthKm, ferries)
	b.Problem.LengthKm = b.Axis.Driven(b.Axis.LengthKm)
	d := &b.Problem.Drive
	d.Pace = sailing(b.Axis, d.Pace)
	if late := b.Late(); late > 0 {
		d.Pace = delayed(d.Pace, late)
	}
	return nil
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

// Late is how much later than its usual departure the trip begins, in minutes.
func (b *Built) Late() float64 { return max(b.Trip.FromMin-b.Trip.Day.DepartMin, 0) }

// afterSettingOff moves stops out of the first metre, where the clock is wrong.
// What lies before a ferry there can no longer be called at.
func (b *Built) afterSettingOff(stops []planner.Stop) []planner.Stop {
	if b.Late() == 0 {
		return stops
	}
	sailing := len(b.Axis.Between(0, trip.Metre)) > 0
	var out []planner.Stop
	for _, s := range stops {
		if sailing && s.Km < trip.Metre/2 {
			b.Candidates[b.Calls[s.ID].Candidate].Excluded = because(aboard, nil)
			delete(b.Calls, s.ID)
			continue
		}
		s.Km = max(s.Km, trip.Metre)
		out = append(out, s)
	}
	return out
}

// ashore moves passes that lie at sea to that end of the ferry which is nearer
// to the place, and drops those that are then outside the corridor.
func (b *Built) ashore(passes []geo.Pass, place orb.Point, line *geo.Line) []geo.Pass {
	if len(b.Axis.Ferries) == 0 {
		return passes
	}
	var out []geo.Pass
	for _, pass := range passes {
		if f, sea := b.Axis.AtSea(pass.AlongM / 1000); sea {
			pass.OffM = math.Inf(1)
			for _, km := range [2]float64{f.FromKm, f.ToKm} {
				if off := geo.DistanceM(line.At(km*1000), place); off < pass.OffM {
					pass.AlongM, pass.OffM = km*1000, off
				}
			}
		}
		if pass.OffM <= b.Trip.CorridorKm*1000 {
			out = append(out, pass)
		}
	}
	return out
}
