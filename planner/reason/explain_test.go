package reason_test

import (
	"slices"
	"testing"

	"ullage/planner"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
)

func TestExplainTank(t *testing.T) {
	// 250 km take 25 L; 20 less the reserve of 3 are there: 8 short.
	r := reasonFor(explain(t, gap()), "fuel")
	if r == nil || r.FromKm != 0 || r.ToKm != 250 || !plantest.Near(r.Missing, 8) {
		t.Fatalf("%+v, want fuel short by 8 from km 0 to km 250", r)
	}
	// Start with 28 of 30, or use 32 % less (17 / 25).
	for _, want := range []planner.Change{{Kind: planner.ChangeStartMore, Tank: "fuel", By: 8}, {Kind: planner.ChangeUseLess, Tank: "fuel", By: 0.32}} {
		if !slices.ContainsFunc(r.Changes, func(c planner.Change) bool {
			return c.Kind == want.Kind && c.Tank == want.Tank && plantest.Near(c.By, want.By) && c.Proven
		}) {
			t.Errorf("changes %+v, want %+v among them", r.Changes, want)
		}
	}
}

func TestExplainDay(t *testing.T) {
	p := gap()
	p.Tanks[0].Start = 30
	p.Drive.MaxKmPerDay = 240 // the only night is at km 260
	r := reasonFor(explain(t, p), "km")
	if r == nil || r.Missing != 20 || r.ToKm != 260 || len(r.Changes) == 0 {
		t.Fatalf("%+v, want 20 km a day more", r)
	}
	p.Drive.MaxKmPerDay, p.Drive.MaxMinPerDay = 400, 250
	if r := reasonFor(explain(t, p), "min"); r == nil || r.Missing != 10 {
		t.Fatalf("%+v, want 10 minutes a day more", r)
	}
}

func TestExplainNightsEndHours(t *testing.T) {
	p := gap()
	p.Tanks[0].Start = 30
	p.Nights = &planner.Range{Min: 3, Max: 4} // one place, one night
	if r := reasonFor(explain(t, p), "nights"); r == nil || r.Missing != 2 {
		t.Errorf("%+v, want 2 nights fewer", r)
	}
	p = gap()
	p.Tanks[0].Start = 30
	p.Tanks[0].End = &planner.End{AtLeast: plantest.Number(28)} // 30 at km 250 leave 25
	if r := reasonFor(explain(t, p), "fuel"); r == nil || !plantest.Near(r.Missing, 3) {
		t.Errorf("%+v, want 3 missing at the end", r)
	}
	p = gap()
	p.Tanks[0].Start = 29
	p.Stops[0].Open = [][2]float64{{0, 100}} // comes by at minute 250
	if r := reasonFor(explain(t, p), "open"); r == nil {
		t.Error("want the hours to blame")
	}
	p = gap()
	p.Tanks[0].Start = 30
	p.Stops[1].Required = true
	p.Nights = &planner.Range{Min: 0, Max: 0}
	if r := reasonFor(explain(t, p), "n"); r == nil {
		t.Error("want the required night to blame")
	}
}

// TestExplainT1: with backup a tank of 75 L is too small, because the gaps
// P3–P6–P8 take 78 L, and the ways to and from the places besides.
func TestExplainT1(t *testing.T) {
	p := plantest.ReadCase(t, "t1_75_60")
	plantest.WithSpare(p)
	reasons := explain(t, p)
	r := reasonFor(reasons, "diesel")
	// 650 km, half the detours of P3 and P8 and all of P6's (4.5 km) take 78.54 L: 3.54 more, in steps of 0.1.
	if r == nil || !plantest.Near(r.Missing, 3.6) || r.FromKm != 640 || r.ToKm != 1000 {
		t.Errorf("%+v, want 3.6 L of diesel missing before km 1000", r)
	}
	if reasonFor(reasons, "backup") == nil {
		t.Error("backup is not named")
	}
}

// TestExplainTiny: there is a reason exactly where there is no plan.
func TestExplainTiny(t *testing.T) {
	for seed := range uint64(60) {
		p := plantest.Tiny(seed)
		plan := solved.Plan(t, p)
		reasons := explain(t, p)
		if (len(reasons) > 0) != (plan.Status == planner.Infeasible) {
			t.Errorf("seed %d: %s, reasons %v", seed, plan.Status, reasons)
		}
	}
}
