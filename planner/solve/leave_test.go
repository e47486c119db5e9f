package solve

import (
	"context"
	"testing"

	"ullage/planner"
)

// TestByAHair: a tank that lasts only by what rounding lets pass, with a pump
// that it does not reach.
func TestByAHair(t *testing.T) {
	p := &planner.Problem{Format: planner.ProblemFormat, LengthKm: 100 + 5e-7,
		Drive: planner.Drive{MaxKmPerDay: 200, MaxMinPerDay: 600, DepartMin: 540, Pace: []planner.Pace{{ToKm: 100 + 5e-7, MinPerKm: 1}}},
		Tanks: []planner.Tank{{ID: "diesel", Kind: planner.Supply, Capacity: 50, Start: 10, PerKm: 0.1}},
		Stops: []planner.Stop{{ID: "pump", Km: 95, DetourKm: 20, DetourMin: 20, Fee: 1, Serves: []planner.Service{{Tank: "diesel", Price: 2, Min: 5}}}}}
	plan, err := Solve(context.Background(), p, Options{})
	if err != nil || plan.Status != planner.Optimal || plan.Cost != 0 || len(plan.Visits) != 0 {
		t.Errorf("%v, cost %v with %d visits, %v; want the plan without a stop", plan.Status, plan.Cost, len(plan.Visits), err)
	}
}
