package answer

import (
	"math"
	"testing"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
	"ullage/planner/trip/triptest/built"
)

// Less warmth, tepid water and less care are tried where gas is short in
// winter: each takes less gas, and none is tried twice or without a model.
func TestRemediesOfLife(t *testing.T) {
	night := func(tr trip.Trip) float64 {
		b := built.Trip(t, tr, []trip.Place{triptest.AlpineSite("a", trip.Stay{})}, build.Options{})
		return triptest.StopOf(t, b.Problem, "a").Night.Use["lpg"]
	}
	tried := 0
	for _, r := range habits {
		for _, kind := range []fact.Kind{cureCooler, cureTepid, cureLessCare} {
			if r.says.Kind != kind {
				continue
			}
			tried++
			tr := triptest.Lived(2, "2027-01-15")
			before := night(tr)
			if !r.apply(&tr) || !(night(tr) < before) {
				t.Errorf("%s: %v L of gas a night, before %v", kind, night(tr), before)
			}
			if r.apply(&tr) {
				t.Errorf("%s: twice", kind)
			}
			if plain := triptest.Eastwards(100); kind != cureTepid && r.apply(&plain) {
				t.Errorf("%s: for a vehicle without a model", kind)
			}
		}
	}
	if tried != 3 {
		t.Errorf("%d remedies tried", tried)
	}
}

// A trip without a plan is told what else would help, and each of that was tried.
func TestTripCures(t *testing.T) {
	tr, places := triptest.TwoWays("32 EUR")
	tr.Stays.MinNights = 2 // 2 × 70 L of fresh water with showers aboard; 80 of 90 L may be used
	water := triptest.At("water", "water", 155, 7, triptest.Yes("fresh"))
	dump := triptest.At("dump", "dump", 155, 7, triptest.Yes("grey"), triptest.Yes("cassette"))
	it := mustPlan(t, tr, append(places, water, dump))
	if it.Status != planner.Infeasible || len(it.Why) == 0 || it.Nearest == nil {
		t.Fatalf("%s, %+v, %+v", it.Status, it.Why, it.Nearest)
	}
	cured := map[fact.Kind]float64{}
	for _, c := range triptest.Of(it.Cures, cureThen) {
		cured[c.Values["what"].List[0].Fact.Kind] = c.Values["sum"].N
	}
	if cured[cureCorridor] <= 0 || cured[cureShowersFrugal] <= 0 {
		t.Errorf("cures = %q, want a wider corridor and a wash at the basin, each with what the trip then costs", triptest.Lines(it.Cures))
	}
	tr.CorridorKm *= 2
	if it = mustPlan(t, tr, append(places, water, dump)); it.Status != planner.Optimal || math.Abs(it.Cost-cured[cureCorridor]) > 0.005 {
		t.Errorf("with a corridor twice as wide it is %s for %v, want %v", it.Status, it.Cost, cured[cureCorridor])
	}
}
