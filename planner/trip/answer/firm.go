package answer

import (
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
)

// This file finds out whether a limit stands in the way that no travelling habit
// moves: the hour of the keys, or the mass on the plate.

// Kinds of such limits.
const (
	firmKeys fact.Kind = "firm.keys" // due at {clock}, with {for} for the hand-over
	firmMass fact.Kind = "firm.mass" // {over} must be left behind, of {allowed} allowed
)

// firm are the limits without which, by itself, there is a plan.
func (r *refusal) firm() []trip.Reason {
	var out []trip.Reason
	if b := r.Built; b.Trip.KeysByMin > 0 && !b.Ease.LateKeys {
		late := b.Eased(build.Ease{ShortMoves: true, LateKeys: true})
		if r.trial.Solves(late.Problem) {
			out = append(out, trip.Reason{Cause: trip.CauseAgreement, Reason: planner.Reason{Kind: firmKeys, Limit: "keys", FromKm: b.Problem.LengthKm, ToKm: b.Problem.LengthKm},
				Says: fact.Of(firmKeys, fact.V{"clock": fact.Clock(b.Trip.KeysByMin), "for": fact.Span(trip.HandOverMin)})})
		}
	}
	if over, ok := r.overweight(); ok {
		out = append(out, trip.Reason{Cause: trip.CauseAgreement, Reason: planner.Reason{Kind: firmMass, Limit: "mass", ToKm: r.Problem.LengthKm, Missing: over},
			Says: fact.Of(firmMass, fact.V{"over": fact.Kg(over), "allowed": fact.Kg(r.Trip.Vehicle.MassKg)})})
	}
	return out
}

// overKg is how finely the kilograms to leave behind are told.
const overKg = 5

// overweight is how many kilograms less there must be aboard for a plan; ok is false
// where the mass is not what stands in the way.
func (r *refusal) overweight() (kg float64, ok bool) {
	if r.Problem.Mass == nil {
		return 0, false
	}
	solves := func(more float64) bool {
		t := r.Trip
		t.Vehicle.EmptyKg -= more // as much is left behind
		b, err := r.again(t)
		return err == nil && r.trial.Solves(b.Problem)
	}
	low, high := 0.0, overKg*1.0
	for !solves(high) {
		if low, high = high, 2*high; high > 1000 {
			return 0, false
		}
	}
	for high-low > overKg {
		if middle := (low + high) / 2; solves(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return high, true
}
