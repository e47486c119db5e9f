package solve_test

import (
	"math"
	"testing"

	"ullage/planner/audit"
	"ullage/planner/internal/plantest"
	"ullage/planner/solve"
)

// TestAny: a quick answer is a plan, no cheaper than the best, and where there is no
// plan there is none.
func TestAny(t *testing.T) {
	found := 0
	for seed := *tinySeed; seed < *tinySeed+60; seed++ {
		p := plantest.Tiny(seed)
		best := leastCost(t, p)
		plan, ok := solve.Any(t.Context(), p)
		switch {
		case !ok:
			continue
		case math.IsInf(best, 1):
			t.Errorf("seed %d: a plan for %v, but there is none", seed, plan.Cost)
		case plan.Cost < best && !plantest.Near(plan.Cost, best):
			t.Errorf("seed %d: %v is cheaper than the best, %v", seed, plan.Cost, best)
		}
		found++
		if err := audit.Plan(p, plan); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
	}
	if found < 10 {
		t.Errorf("%d plans found, too few to tell", found)
	}
}
