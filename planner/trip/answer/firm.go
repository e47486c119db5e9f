package answer

import (
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/reason"
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
func (b asker) firm(trial reason.Trial) []trip.Reason {
	var out []trip.Reason
	if b.Trip.KeysByMin > 0 && !b.Ease.LateKeys {
		late := b.Eased(build.Ease{ShortMoves: true, LateKeys: true})
		if trial.Solves(late.Problem) {
			out = append(out, trip.Reason{Cause: trip.CauseAgreement, Reason: planner.Reason{Kind: firmKeys, Limit: "keys", FromKm: b.Problem.LengthKm, ToKm: b.Problem.LengthKm},
				Says: fact.Of(firmKeys, fact.V{"clock": fact.Clock(b.Trip.KeysByMin), "for": fact.Span(trip.HandOverMin)})})
		}
	}
	if over, ok := b.overweight(trial); ok {
		out = append(out, trip.Reason{Cause: trip.CauseAgreement, Reason: planner.Reason{Kind: firmMass, Limit: "mass", ToKm: b.Problem.LengthKm, Missing: over},
			Says: fact.Of(firmMass, fact.V{"over": fact.Kg(over), "allowed": fact.Kg(b.Trip.Vehicle.MassKg)})})
	}
	return out
}

// overKg is how finely the kilograms to leave behind are told.
const overKg = 5

// overweight is how many kilograms less there must be aboard for a plan; ok is false
// where the mass is not what stands in the way.
func (b asker) overweight(trial reason.Trial) (kg float64, ok bool) {
	if b.Problem.Mass == nil {
		return 0, false
	}
	solves := func(more float64) bool {
		t := b.Trip
		t.Vehicle.EmptyKg -= more // as much is left behind
		lighter, err := b.again(t)
		return err == nil && trial.Solves(lighter.Problem)
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
