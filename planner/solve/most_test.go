package solve_test

import (
	"testing"

	"ullage/planner"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
	"ullage/planner/solve"
)

// TestMost: a plan that may not cost more is the same plan; where all cost more there
// is none, and it is known that they do.
func TestMost(t *testing.T) {
	t.Parallel()
	dear, cheap := 0, 0
	for seed := range uint64(200) {
		p := plantest.Tiny(seed)
		plan := solved.Plan(t, p)
		if plan.End == nil || plan.Cost < 1 {
			continue
		}
		for most, want := range map[float64]bool{plan.Cost * 1.001: true, plan.Cost * 0.999: false} {
			got, err := solve.Solve(t.Context(), p, solve.Options{Most: most})
			if err != nil {
				t.Fatal(seed, err)
			}
			switch {
			case want && (got.Status != planner.Optimal || !plantest.Near(got.Cost, plan.Cost)):
				t.Errorf("seed %d: %s for %v, want %v", seed, got.Status, got.Cost, plan.Cost)
			case !want && (got.Status != planner.Unknown || got.Bound < most-1e-6 || got.Bound > plan.Cost+1e-6):
				t.Errorf("seed %d: %s with a bound of %v, want one of %v to %v", seed, got.Status, got.Bound, most, plan.Cost)
			case want:
				cheap++
			default:
				dear++
			}
		}
	}
	if dear < 30 || cheap < 30 {
		t.Errorf("%d dear, %d cheap: want more to look at", dear, cheap)
	}
}
