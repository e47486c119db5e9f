package planner_test

import (
	"context"
	"fmt"

	"ullage/planner"
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
	plan, err := planner.Solve(context.Background(), p, planner.Options{})
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

// A plan that is changed by hand says which rule it breaks.
func ExampleReplay() {
	p := &planner.Problem{
		Format: planner.ProblemFormat, LengthKm: 200,
		Drive: planner.Drive{MaxKmPerDay: 400, MaxMinPerDay: 600, Pace: []planner.Pace{{ToKm: 200, MinPerKm: 1}}},
		Tanks: []planner.Tank{{ID: "diesel", Kind: planner.Supply, Capacity: 60, Reserve: 5, Start: 22, PerKm: 0.1}},
		Stops: []planner.Stop{{ID: "pump", Km: 150, Serves: []planner.Service{{Tank: "diesel", Price: 2}}}},
	}
	_, err := planner.Replay(p, []planner.Visit{{Stop: "pump", Serve: []planner.Serve{{Tank: "diesel", Amount: 60}}}})
	fmt.Println(err)
	// Output:
	// planner: capacity: over capacity, tank "diesel", stop "pump", km 150: would hold 67, can hold 60, off by 7
}
