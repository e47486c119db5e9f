package solve_test

import (
	"context"
	"flag"
	"math"
	"testing"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
	"ullage/planner/solve"
)

var (
	tinyCount = flag.Int("tiny", 200, "how many tiny random problems to compare with brute force")
	tinySeed  = flag.Uint64("seed", 1, "seed of the first tiny problem")
)

// failer is what helpers need of a test, a benchmark or a drawn case.
type failer interface {
	Helper()
	Fatal(args ...any)
	Errorf(format string, args ...any)
}

// checkOptimum wants the plan's claims to be true for the known optimum, +Inf
// if there is no plan, and returns whether it is proven optimal or infeasible.
func checkOptimum(t failer, plan planner.Plan, optimum float64) (proven bool) {
	t.Helper()
	none := math.IsInf(optimum, 1)
	switch plan.Status {
	case planner.Infeasible:
		if !none {
			t.Errorf("infeasible, but there is a plan for %v", optimum)
		}
		return true
	case planner.Unknown:
		if plan.Bound > optimum && !plantest.Near(plan.Bound, optimum) {
			t.Errorf("no plan, and bound %v is above the optimum %v", plan.Bound, optimum)
		}
	case planner.Optimal, planner.Feasible:
		if none {
			t.Errorf("a plan for %v, but there is none", plan.Cost)
		} else if plan.Status == planner.Optimal && !plantest.Near(plan.Cost, optimum) || plan.Cost < optimum && !plantest.Near(plan.Cost, optimum) {
			t.Errorf("%s with cost %v, optimum %v", plan.Status, plan.Cost, optimum)
		} else if plan.Bound > optimum && !plantest.Near(plan.Bound, optimum) {
			t.Errorf("bound %v is above the optimum %v", plan.Bound, optimum)
		}
	}
	return plan.Status == planner.Optimal
}

// TestSolveTiny compares the solver with brute force where everything that
// the model knows turns up.
func TestSolveTiny(t *testing.T) {
	t.Parallel()
	proven, infeasible := 0, 0
	for seed := *tinySeed; seed < *tinySeed+uint64(*tinyCount); seed++ {
		p := plantest.Tiny(seed)
		want := plantest.Brute(p)
		if math.IsInf(want, 1) {
			infeasible++
		}
		if checkOptimum(t, solved.Plan(t, p), want) {
			proven++
		}
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
	if infeasible < *tinyCount/20 || infeasible > *tinyCount*3/4 {
		t.Errorf("%d of %d have no plan: too one-sided", infeasible, *tinyCount)
	}
	if proven < *tinyCount {
		t.Errorf("%d of %d proven optimal or infeasible, want all", proven, *tinyCount)
	}
	t.Logf("%d problems, %d proven, %d infeasible", *tinyCount, proven, infeasible)
}

// TestBoundWhenLabelsRunOut: an answer that was broken off claims no more than is
// true, after however many partial plans.
func TestBoundWhenLabelsRunOut(t *testing.T) {
	t.Parallel()
	brokenOff := 0
	for seed := *tinySeed; seed < *tinySeed+40; seed++ {
		p := plantest.Tiny(seed)
		best := leastCost(t, p)
		for most := 1; most < 20; most++ {
			plan, err := solve.Solve(context.Background(), p, solve.Options{MaxLabels: most})
			if err != nil {
				t.Fatal(err)
			}
			if !checkOptimum(t, plan, best) {
				brokenOff++
			}
			if t.Failed() {
				t.Fatalf("seed %d, %d labels", seed, most)
			}
		}
	}
	if brokenOff < 40 {
		t.Errorf("%d answers broken off, too few to tell", brokenOff)
	}
}

var manyCount = flag.Int("many", 3000, "how many tiny random problems to solve and audit without an oracle")

// TestManyAudited solves many tiny problems; every answer must be proven and
// pass the auditor: go test ./planner/solve -run TestManyAudited -many 1000000 -timeout 2h.
func TestManyAudited(t *testing.T) {
	t.Parallel()
	infeasible := 0
	first := *tinySeed + 1<<40 // other problems than those with an oracle
	for seed := first; seed < first+uint64(*manyCount); seed++ {
		plan, err := solve.Solve(context.Background(), plantest.Tiny(seed), solve.Options{})
		if err == nil {
			err = audit.Check(plantest.Tiny(seed), plan)
		}
		switch {
		case err != nil:
			t.Fatalf("seed %d: %v", seed-1<<40, err)
		case plan.Status == planner.Infeasible:
			infeasible++
		case plan.Status != planner.Optimal:
			t.Fatalf("seed %d: %s, cost %v, bound %v", seed-1<<40, plan.Status, plan.Cost, plan.Bound)
		}
	}
	t.Logf("%d audited, 0 invalid; %d infeasible", *manyCount, infeasible)
}
