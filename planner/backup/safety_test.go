package backup_test

import (
	"math"
	"testing"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/backup"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
	"ullage/planner/solve"
)

// T1 costs 282.3296 without backup and 343.1146 with it and 1.44 L more to
// hand back, both by GLPK and CBC (the worked case T1). The
// margin is bought in both: without backup at P8, 1.69 a litre.
func TestPriceOfSafetyOfT1(t *testing.T) {
	p := plantest.ReadCase(t, "t1")
	plantest.WithSpare(p)
	p.Tanks[0].End.AtLeast = plantest.Number(51.44)
	s, ok, err := backup.PriceOfSafety(t.Context(), p, p, solved.Plan(t, p), solve.Options{})
	if want := 343.1146 - (282.3296 + 1.44*1.69); err != nil || !ok || !s.Proven || math.Abs(s.Price()-want) > 1e-3 {
		t.Errorf("%+v %v %v, want a price of %v", s, ok, err, want)
	}
}

// Both ways round it is the same price, unless more than the rule of thumb was
// needed to survive; and it is never negative.
func TestPriceOfSafetyTiny(t *testing.T) {
	t.Parallel()
	priced, none := 0, 0
	for seed := range uint64(300) {
		p := plantest.Tiny(seed)
		p.Backup = false
		plan := solved.Plan(t, p)
		if plan.End == nil {
			continue
		}
		s, ok, err := backup.PriceOfSafety(t.Context(), p, p, plan, solve.Options{})
		if err != nil || !ok {
			t.Fatal(seed, ok, err)
		}
		p.Backup = true
		backed := solved.Plan(t, p)
		if s.None != (backed.Status == planner.Infeasible) {
			t.Errorf("seed %d: %+v, but with backup it is %s", seed, s, backed.Status)
		}
		if s.None {
			none++
			continue
		}
		priced++
		if s.Price() < 0 || s.With < backed.Cost-1e-6 || !plantest.Near(s.Without, plan.Cost) {
			t.Errorf("seed %d: %+v, with backup %v, without %v", seed, s, backed.Cost, plan.Cost)
		}
		if r, ok, err := backup.PriceOfSafety(t.Context(), p, p, backed, solve.Options{}); err != nil || !ok || !plantest.Near(r.Price(), backed.Cost-plan.Cost) {
			t.Errorf("seed %d: %+v %v %v the other way round, want %v", seed, r, ok, err, backed.Cost-plan.Cost)
		}
	}
	t.Logf("%d priced, %d without a safe plan", priced, none)
	if priced < 30 || none < 5 {
		t.Error("want more to look at")
	}
}

// TestSurvive: a plan of the problem, no dearer than its bound says it can be,
// that survives at least as many closures as the plan of least cost.
func TestSurvive(t *testing.T) {
	t.Parallel()
	better, all := 0, 0
	for seed := range uint64(300) {
		p := plantest.Tiny(seed)
		p.Backup = true
		plan := solved.Plan(t, p)
		got, closures, err := backup.Survive(t.Context(), p, p, backup.Steady{}, solve.Options{})
		if err != nil {
			t.Fatal(seed, err)
		}
		if err := audit.Check(p, got); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		if (got.End == nil) != (plan.End == nil) || got.End == nil {
			continue
		}
		all++
		if !plantest.Near(got.Bound, plan.Bound) && got.Bound > plan.Cost || got.Cost < plan.Cost-1e-6 {
			t.Errorf("seed %d: %v, bound %v; least cost %v", seed, got.Cost, got.Bound, plan.Cost)
		}
		was, is := dead(backup.Closures(p, plan)), dead(closures)
		if is > was {
			t.Errorf("seed %d: %d closures not survived, was %d", seed, is, was)
		}
		if is < was {
			better++
		}
	}
	t.Logf("%d plans, %d safer than the cheapest", all, better)
	if better < 3 {
		t.Error("want more to look at")
	}
}

func dead(closures []backup.Closure) int {
	n := 0
	for _, c := range closures {
		if !c.Survived {
			n++
		}
	}
	return n
}

// T1 with the spare of its rule of thumb costs 340.6810 (GLPK, CBC), but after a
// closure of a disposal point 0.6 to 1.4 L are missing at the return; a margin
// of 1.44 L set by hand survives every closure at 343.1146. Survive finds the
// like by itself.
func TestSurviveT1(t *testing.T) {
	p := plantest.ReadCase(t, "t1")
	plantest.WithSpare(p)
	plan, closures, err := backup.Survive(t.Context(), p, p, backup.Steady{}, solve.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if dead(closures) > 0 || math.Abs(plan.Bound-340.6810) > 1e-3 {
		t.Errorf("%d closures not survived, bound %v", dead(closures), plan.Bound)
	}
	if plan.Status != planner.Feasible || plan.Cost < 340.6810 || plan.Cost > 343.1146+1e-3 {
		t.Errorf("%s at %v, want more than 340.6810 and no more than 343.1146", plan.Status, plan.Cost)
	}
	t.Logf("survives every closure at %.4f", plan.Cost)
}
