package planner_test

import (
	"context"
	"flag"
	"math"
	"testing"

	. "ullage/planner"
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

// solve runs the solver and audits what it says.
func solve(t failer, p *Problem) Plan {
	t.Helper()
	plan, err := Solve(context.Background(), p, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if err := Audit(p, plan); err != nil {
		t.Fatal(err)
	}
	return plan
}

// checkOptimum wants the plan's claims to be true for the known optimum, +Inf
// if there is no plan, and returns whether it is proven optimal or infeasible.
func checkOptimum(t failer, plan Plan, optimum float64) (proven bool) {
	t.Helper()
	none := math.IsInf(optimum, 1)
	switch plan.Status {
	case Infeasible:
		if !none {
			t.Errorf("infeasible, but there is a plan for %v", optimum)
		}
		return true
	case Optimal, Feasible:
		if none {
			t.Errorf("a plan for %v, but there is none", plan.Cost)
		} else if plan.Status == Optimal && !near(plan.Cost, optimum) || plan.Cost < optimum && !near(plan.Cost, optimum) {
			t.Errorf("%s with cost %v, optimum %v", plan.Status, plan.Cost, optimum)
		} else if plan.Bound > optimum && !near(plan.Bound, optimum) {
			t.Errorf("bound %v is above the optimum %v", plan.Bound, optimum)
		}
	}
	return plan.Status == Optimal
}

// TestSolveTiny compares the solver with brute force where everything that
// the model knows turns up.
func TestSolveTiny(t *testing.T) {
	proven, infeasible := 0, 0
	for seed := *tinySeed; seed < *tinySeed+uint64(*tinyCount); seed++ {
		p := tiny(seed)
		want := brute(p)
		if math.IsInf(want, 1) {
			infeasible++
		}
		if checkOptimum(t, solve(t, p), want) {
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

var manyCount = flag.Int("many", 3000, "how many tiny random problems to solve and audit without an oracle")

// TestManyAudited solves many tiny problems; every answer must be proven and
// pass the auditor: go test ./planner -run TestManyAudited -many 1000000 -timeout 2h.
func TestManyAudited(t *testing.T) {
	infeasible := 0
	first := *tinySeed + 1<<40 // other problems than those with an oracle
	for seed := first; seed < first+uint64(*manyCount); seed++ {
		plan, err := Solve(context.Background(), tiny(seed), Options{})
		if err == nil {
			err = Audit(tiny(seed), plan)
		}
		switch {
		case err != nil:
			t.Fatalf("seed %d: %v", seed-1<<40, err)
		case plan.Status == Infeasible:
			infeasible++
		case plan.Status != Optimal:
			t.Fatalf("seed %d: %s, cost %v, bound %v", seed-1<<40, plan.Status, plan.Cost, plan.Bound)
		}
	}
	t.Logf("%d audited, 0 invalid; %d infeasible", *manyCount, infeasible)
}
