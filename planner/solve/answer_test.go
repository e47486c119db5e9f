package solve

import (
	"testing"

	"ullage/planner"
)

// TestProven: a plan is the best one where nothing can be cheaper by more than a
// millionth; by a millionth and a half it is only a good one.
func TestProven(t *testing.T) {
	p := &planner.Problem{Format: planner.ProblemFormat, LengthKm: 100,
		Drive: planner.Drive{MaxKmPerDay: 100, MaxMinPerDay: 100, Pace: []planner.Pace{{ToKm: 100, MinPerKm: 1}}},
		Tanks: []planner.Tank{{ID: "fuel", Kind: planner.Supply, Capacity: 30, Start: 30, PerKm: 0.1}},
		Stops: []planner.Stop{{ID: "must", Km: 50, Fee: 100, Required: true}}}
	best, err := Solve(t.Context(), p, Options{})
	if err != nil || best.Status != planner.Optimal || best.Cost != 100 {
		t.Fatalf("%s with cost %v, %v; want the fee of 100", best.Status, best.Cost, err)
	}
	for bound, want := range map[float64]planner.Status{0: planner.Feasible, 99.99985: planner.Feasible, 99.99989: planner.Feasible, 99.99991: planner.Optimal, 100: planner.Optimal} {
		s := &solver{p: p, best: best, cost: 100, bound: bound}
		if plan, err := s.answer(nil); err != nil || plan.Status != want || plan.Bound != bound {
			t.Errorf("bound %v: %s with bound %v, %v; want %s", bound, plan.Status, plan.Bound, err, want)
		}
	}
}
