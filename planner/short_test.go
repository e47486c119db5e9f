package planner_test

import (
	"math"
	"testing"

	"ullage/planner"
	"ullage/planner/internal/plantest"
)

// TestShortfallNeverLies: brute force finds no plan wherever it sees a reason.
// tiny problems are mostly possible, so tanks, days and services are made scarcer.
func TestShortfallNeverLies(t *testing.T) {
	proven := map[string]int{}
	for seed := range uint64(1200) {
		p := plantest.Tiny(seed)
		if len(p.Stops) > 6 {
			continue // slow for brute force
		}
		plantest.Scarcer(p, seed)
		why := planner.Shortfall(p)
		if len(why) == 0 {
			continue // it proves nothing
		}
		if cost := plantest.Brute(p); !math.IsInf(cost, 1) {
			t.Errorf("seed %d: a plan costs %v, but %+v", seed, cost, why)
		}
		for _, r := range why {
			proven[r.Limit]++
			if r.Kind == "" || !(r.Missing > 0) || r.FromKm > r.ToKm {
				t.Errorf("seed %d: %+v", seed, r)
			}
		}
	}
	t.Logf("reasons %v", proven)
	for _, limit := range []string{"fuel", "water", "waste", "km", "min", "nights"} {
		if proven[limit] < 5 {
			t.Errorf("%d reasons about %s, want more to look at", proven[limit], limit)
		}
	}
}

// By hand: 300 km, at most 100 a day, are two nights at least. Gas is sold
// nowhere; the two cheapest of the three nights take 1 + 2.
func TestShortfallByHand(t *testing.T) {
	night := func(id string, km, gas float64) planner.Stop {
		return planner.Stop{ID: id, Km: km, Night: &planner.Night{Nights: 1, Use: map[string]float64{"gas": gas}}}
	}
	p := &planner.Problem{
		Format: planner.ProblemFormat, LengthKm: 300,
		Drive: planner.Drive{MaxKmPerDay: 100, MaxMinPerDay: 600, Pace: []planner.Pace{{ToKm: 300, MinPerKm: 1}}},
		Tanks: []planner.Tank{{ID: "gas", Name: "LPG", Unit: "L", Kind: planner.Supply, Capacity: 20, Reserve: 1, Start: 3.5}},
		Stops: []planner.Stop{night("a", 90, 2), night("b", 180, 1), night("c", 210, 4)},
	}
	if err := p.Validate(); err != nil {
		t.Fatal(err)
	}
	// 1 in reserve and 3 for the nights are 0.5 more than 3.5.
	why := planner.Shortfall(p)
	if len(why) != 1 || !plantest.Near(why[0].Missing, 0.5) || why[0].Kind != planner.ReasonTank || why[0].Limit != "gas" || why[0].FromKm != 0 || why[0].ToKm != 300 {
		t.Errorf("%+v, want 0.5 L of gas short from km 0 to km 300", why)
	}
	p.Nights = &planner.Range{Min: 3, Max: 3} // the third night takes 4 more
	if why := planner.Shortfall(p); len(why) != 1 || !plantest.Near(why[0].Missing, 4.5) {
		t.Errorf("%+v, want 4.5 missing", why)
	}
	p.Tanks[0].Start = 8
	if why := planner.Shortfall(p); len(why) != 0 {
		t.Errorf("%+v, want none", why)
	}
	p.Nights.Min, p.Nights.Max = 1, 1
	if why := planner.Shortfall(p); len(why) != 1 || why[0].Limit != "nights" || why[0].Missing != 1 {
		t.Errorf("%+v, want one more night", why)
	}
	p.Drive.MaxKmPerDay = 80
	p.Nights = nil
	if why := planner.Shortfall(p); len(why) != 1 || why[0].Limit != "km" || !plantest.Near(why[0].Missing, 10) || why[0].ToKm != 90 {
		t.Errorf("%+v, want 10 km more a day", why)
	}
}

func BenchmarkShortfall(b *testing.B) {
	p := plantest.Made{LengthKm: 4000, Seed: 1}.Problem()
	b.ReportAllocs()
	for b.Loop() {
		if why := planner.Shortfall(p); len(why) > 0 {
			b.Fatal(why)
		}
	}
}
