package solve_test

import (
	"math"
	"testing"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/internal/plantest"
	"ullage/planner/replay"
)

// This file compares the oracles with each other, so that the solver is not
// measured against a mistake.

// TestBruteAgainstMILP: both are independent statements of the model.
// The plans that the MILP solver finds must also replay to its objective.
func TestBruteAgainstMILP(t *testing.T) {
	t.Parallel()
	solver := findMILP(t)
	var problems []*planner.Problem
	var seeds []uint64
	for seed := *tinySeed; len(problems) < *tinyCount/3; seed++ {
		p := plantest.Tiny(seed)
		for i := range p.Stops {
			p.Stops[i].Open = nil // the program knows no windows
		}
		problems, seeds = append(problems, p), append(seeds, seed)
	}
	solved := 0
	for i, got := range solver.solve(t, 30, writeLPs(t, problems)) {
		p := problems[i]
		want := plantest.Brute(p)
		if math.IsInf(want, 1) {
			if got.Status != "infeasible" {
				t.Errorf("seed %d: %s says %s %v, brute force infeasible", seeds[i], solver.name, got.Status, got.Objective)
			}
			continue
		}
		if got.Status != "optimal" || !plantest.Near(got.Objective, want) {
			t.Errorf("seed %d: %s says %s %v, brute force %v", seeds[i], solver.name, got.Status, got.Objective, want)
			continue
		}
		solved++
		if got.Values != nil {
			checkReplay(t, seeds[i], p, got)
		}
	}
	t.Logf("%s: %d problems, %d with a plan", solver.name, len(problems), solved)
}

func checkReplay(t *testing.T, seed uint64, p *planner.Problem, got milpResult) {
	t.Helper()
	// The program may buy for nothing and throw away; a plan may not.
	visits, err := replay.Fit(p, visitsOf(p, got.Values))
	if err != nil {
		t.Errorf("seed %d: %v", seed, err)
		return
	}
	plan, err := replay.Plan(p, visits)
	if err != nil {
		t.Errorf("seed %d: %v", seed, err)
		return
	}
	if !plantest.Near(plan.Cost, got.Objective) {
		t.Errorf("seed %d: replayed cost %v, objective %v", seed, plan.Cost, got.Objective)
	}
	if err := audit.Check(p, plan); err != nil {
		t.Errorf("seed %d: %v", seed, err)
	}
}
