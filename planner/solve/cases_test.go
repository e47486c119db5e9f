package solve_test

import (
	"testing"

	"ullage/planner"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
)

// publishedCases are problems solved elsewhere: testdata/cases/SOURCES.md
// names the sources. An amount is the published policy, by stop.
var publishedCases = []struct {
	name    string
	optimum float64
	amounts map[string]float64
}{
	{"lin", 75.80, map[string]float64{"s01": 12, "s02": 2, "s03": 4, "s04": 4}},
	{"biola1", 28, map[string]float64{"s01": 1, "s02": 15, "s04": 5}},
	{"biola2", 162, map[string]float64{"s01": 12, "s03": 15, "s04": 7, "s05": 12, "s06": 3}},
	{"kalvelagen", 218.977558, map[string]float64{"s01": 10.811, "s07": 50, "s12": 25.566, "s20": 9.735}},
	{"t1", 282.3296, map[string]float64{"P3": 72.24, "P8": 65.48}},
	{"t1_75_40", 322.3842, map[string]float64{"P1": 10.48, "P3": 67, "P6": 13.82, "P8": 66.78}},
	{"t1_75_60", 285.4234, map[string]float64{"P3": 57.24, "P6": 13.82, "P8": 66.78}},
}

func TestPublishedCases(t *testing.T) {
	for _, tc := range publishedCases {
		t.Run(tc.name, func(t *testing.T) {
			p := plantest.ReadCase(t, tc.name)
			plan := solved.Plan(t, p)
			// The published optima have four decimals, or six.
			if plan.Status != planner.Optimal || plan.Cost-tc.optimum > 5e-5 || tc.optimum-plan.Cost > 5e-5 {
				t.Errorf("%s, cost %v, published optimum %v", plan.Status, plan.Cost, tc.optimum)
			}
			got := map[string]float64{}
			for _, v := range plan.Visits {
				for _, y := range v.Serve {
					if y.Tank == "diesel" {
						got[v.Stop] = y.Amount
					}
				}
			}
			for stop, amount := range got {
				want, ok := tc.amounts[stop]
				if !ok || amount-want > 6e-4 || want-amount > 6e-4 {
					t.Errorf("diesel at %s: %v, published %v", stop, amount, want)
				}
			}
			if len(got) != len(tc.amounts) {
				t.Errorf("diesel at %d stops %v, published %d", len(got), got, len(tc.amounts))
			}
		})
	}
}

// TestKalvelagenFewestStops: with a dear visit the same data ask for the
// fewest stops, then the cheapest. 3 and 239.1635: GLPK (SOURCES.md).
func TestKalvelagenFewestStops(t *testing.T) {
	p := plantest.ReadCase(t, "kalvelagen")
	for i := range p.Stops {
		p.Stops[i].Fee = 1000
	}
	plan := solved.Plan(t, p)
	if plan.Status != planner.Optimal || len(plan.Visits) != 3 || plan.Cost-3239.1635 > 5e-5 || 3239.1635-plan.Cost > 5e-5 {
		t.Errorf("%s with %d stops, cost %v; want 3 stops, 3239.1635", plan.Status, len(plan.Visits), plan.Cost)
	}
}

// TestBackupOfT1: 340.6810 by GLPK and CBC, infeasible with 75 L.
func TestBackupOfT1(t *testing.T) {
	p := plantest.ReadCase(t, "t1")
	plantest.WithSpare(p)
	if plan := solved.Plan(t, p); plan.Status != planner.Optimal || plan.Cost-340.681 > 5e-5 || 340.681-plan.Cost > 5e-5 {
		t.Errorf("%s, cost %v, want 340.6810", plan.Status, plan.Cost)
	}
	// With 1.44 L more to hand back, the way to and from a fallback 12 km off, every closure is survived: 343.1146.
	p.Tanks[0].End.AtLeast = plantest.Number(51.44)
	if plan := solved.Plan(t, p); plan.Status != planner.Optimal || plan.Cost-343.1146 > 5e-5 || 343.1146-plan.Cost > 5e-5 {
		t.Errorf("%s, cost %v, want 343.1146", plan.Status, plan.Cost)
	}
	for _, name := range []string{"t1_75_40", "t1_75_60"} {
		p := plantest.ReadCase(t, name)
		plantest.WithSpare(p)
		if plan := solved.Plan(t, p); plan.Status != planner.Infeasible {
			t.Errorf("%s with backup: %s, want infeasible", name, plan.Status)
		}
	}
}
