package build

import (
	"math"
	"testing"
	"ullage/planner/life"
	"ullage/planner/trip"
	"ullage/planner/trip/triptest"
)

// A family in the over-cab: 2930 + 2 × 75 + 2 × 40 + 40 + 72.1 kg, full of
// diesel (75 × 0.84), exhaust fluid (19 × 1.09) and gas (43.52 × 0.508) leave
// 3500 − 3377.9 = 122 L of water.
func TestWeightLimitsFreshWater(t *testing.T) {
	tr := triptest.Lived(3, "2027-07-15")
	tr.Party = trip.Party{Adults: 2, Children: 2, Showers: "sites"}
	b := mustBuild(t, tr, nil, Options{})
	if w := b.Weight; w == nil || math.Abs(w.FreshL-122.1) > 0.3 || triptest.Line(w.Says) != "weight.with allowed=3500kg most=122L over=18kg tank=fresh" {
		t.Fatalf("weight %+v", w)
	}
	i := 3
	if k := b.Problem.Tanks[i]; k.ID != "fresh" || math.Abs(k.Capacity-b.Weight.FreshL) > 1e-9 || k.Start > k.Capacity {
		t.Errorf("tank %+v, want %v L", k, b.Weight.FreshL)
	}
	tr.GearKg = 400 // too heavy even without water: a warning, and no dry trip
	heavy := mustBuild(t, tr, nil, Options{})
	if heavy.Weight.Says.Kind != life.HeavyWithout || heavy.Problem.Tanks[i].Capacity != 140 {
		t.Errorf("%+v, tank of %v", heavy.Weight, heavy.Problem.Tanks[i].Capacity)
	}
}
