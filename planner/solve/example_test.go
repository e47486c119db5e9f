package solve_test

import (
	"context"
	"fmt"

	"ullage/planner"
	"ullage/planner/solve"
)

// A trip of 300 km with fuel for 170 km needs one stop for fuel: the one at
// km 150 is cheap, the one at km 100 dear.
func ExampleSolve() {
	p := &planner.Problem{
		Format: planner.ProblemFormat, LengthKm: 300,
		Drive: planner.Drive{MaxKmPerDay: 400, MaxMinPerDay: 600, DepartMin: 540, Pace: []planner.Pace{{ToKm: 300, MinPerKm: 1}}},
		Tanks: []planner.Tank{{ID: "diesel", Kind: planner.Supply, Capacity: 60, Reserve: 5, Start: 22, PerKm: 0.1}},
		Stops: []planner.Stop{
			{ID: "dear", Km: 100, Serves: []planner.Service{{Tank: "diesel", Price: 2, Min: 5}}},
			{ID: "cheap", Km: 150, Serves: []planner.Service{{Tank: "diesel", Price: 1.5, Min: 5}}},
		},
	}
	plan, err := solve.Solve(context.Background(), p, solve.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s: %.2f\n", plan.Status, plan.Cost)
	for _, v := range plan.Visits {
		fmt.Printf("km %.0f %s: %.1f\n", v.Arrive.Km, v.Stop, v.Serve[0].Amount)
	}
	// Output:
	// optimal: 19.50
	// km 150 cheap: 13.0
}
