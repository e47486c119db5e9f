package build

import (
	"math"
	"testing"
	"ullage/planner"
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
	fresh := b.Problem.Tanks[3]
	if fresh.ID != "fresh" || fresh.Capacity != 140 || math.Abs(fresh.Start-b.Weight.FreshL) > 1e-9 {
		t.Errorf("tank %+v, want to set off with %v L", fresh, b.Weight.FreshL)
	}
	// Grey water and the cassette count too, at 1 kg a litre, from one departure to the next.
	if m := b.Problem.Mass; m == nil || math.Abs(m.Most-122.1) > 0.3 || len(m.Per) != 3 || m.Per["grey"] != 1 || m.Per["cassette"] != 1 {
		t.Errorf("mass %+v", m)
	}
	tr.Levels = map[string]float64{"grey": 100} // waste first, then as much water as is left
	if b := mustBuild(t, tr, nil, Options{}); math.Abs(b.Problem.Tanks[3].Start-22.1) > 0.3 {
		t.Errorf("%v L with 100 L of grey water, want 22", b.Problem.Tanks[3].Start)
	}
	tr.Levels, tr.GearKg = nil, 240 // 112.1 kg of gear were counted with: 5.8 kg too heavy without a drop
	heavy := mustBuild(t, tr, nil, Options{})
	if heavy.Weight.Says.Kind != life.HeavyWithout || heavy.Problem.Tanks[3].Start != 0 {
		t.Errorf("%+v, starts with %v", heavy.Weight, heavy.Problem.Tanks[3].Start)
	}
	why := planner.Shortfall(heavy.Problem)
	if len(why) == 0 || why[len(why)-1].Kind != planner.ReasonMass || math.Abs(why[len(why)-1].Missing-5.8) > 0.3 {
		t.Errorf("%+v, want 5.8 kg too many", why)
	}
}
