package planner_test

import (
	"math"
	"slices"
	"testing"

	. "ullage/planner"
)

// This file compares the oracles with each other, so that the solver is not
// measured against a mistake.

// near compares costs with the relative tolerance of the model.
func near(a, b float64) bool {
	return a == b || math.Abs(a-b) <= 1e-6*max(1, math.Abs(a), math.Abs(b))
}

// TestBruteAgainstMILP: both are independent statements of the model.
// The plans that the MILP solver finds must also replay to its objective.
func TestBruteAgainstMILP(t *testing.T) {
	solver := findMILP(t)
	var problems []*Problem
	var seeds []uint64
	for seed := *tinySeed; len(problems) < *tinyCount/3; seed++ {
		p := tiny(seed)
		for i := range p.Stops {
			p.Stops[i].Open = nil // the program knows no windows
		}
		problems, seeds = append(problems, p), append(seeds, seed)
	}
	solved := 0
	for i, got := range solver.solve(t, 30, writeLPs(t, problems)) {
		p := problems[i]
		want := brute(p)
		if math.IsInf(want, 1) {
			if got.Status != "infeasible" {
				t.Errorf("seed %d: %s says %s %v, brute force infeasible", seeds[i], solver.name, got.Status, got.Objective)
			}
			continue
		}
		if got.Status != "optimal" || !near(got.Objective, want) {
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

func checkReplay(t *testing.T, seed uint64, p *Problem, got milpResult) {
	t.Helper()
	visits := visitsOf(p, got.Values)
	plan, err := Plan{}, error(nil)
	for {
		var full []Visit
		if full, err = WasteAmounts(p, visits); err == nil {
			plan, err = Replay(p, full)
		}
		// The program may buy for nothing and throw away; a plan may not.
		if b, ok := err.(*Broken); !ok || b.Rule != RuleCapacity || !pour(visits, b) {
			break
		}
	}
	if err != nil {
		t.Errorf("seed %d: %v", seed, err)
		return
	}
	if !near(plan.Cost, got.Objective) {
		t.Errorf("seed %d: replayed cost %v, objective %v", seed, plan.Cost, got.Objective)
	}
	if err := Audit(p, plan); err != nil {
		t.Errorf("seed %d: %v", seed, err)
	}
}

// pour takes what is over capacity off the amount that was too much.
func pour(visits []Visit, b *Broken) bool {
	for i, v := range visits {
		for j, y := range v.Serve {
			if v.Stop == b.Stop && y.Tank == b.Tank {
				visits[i].Serve[j].Amount -= b.Have - b.Need
				if visits[i].Serve[j].Amount <= Tolerance {
					visits[i].Serve = slices.Delete(v.Serve, j, j+1)
				}
				return true
			}
		}
	}
	return false
}
