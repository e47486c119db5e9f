package replay_test

import (
	"fmt"

	"ullage/planner"
	"ullage/planner/replay"
)

// A plan that is changed by hand says which rule it breaks.
func ExamplePlan() {
	p := &planner.Problem{
		Format: planner.ProblemFormat, LengthKm: 200,
		Drive: planner.Drive{MaxKmPerDay: 400, MaxMinPerDay: 600, Pace: []planner.Pace{{ToKm: 200, MinPerKm: 1}}},
		Tanks: []planner.Tank{{ID: "diesel", Kind: planner.Supply, Capacity: 60, Reserve: 5, Start: 22, PerKm: 0.1}},
		Stops: []planner.Stop{{ID: "pump", Km: 150, Serves: []planner.Service{{Tank: "diesel", Price: 2}}}},
	}
	_, err := replay.Plan(p, []planner.Visit{{Stop: "pump", Serve: []planner.Serve{{Tank: "diesel", Amount: 60}}}})
	fmt.Println(err)
	// Output:
	// planner: broken.capacity, tank "diesel", stop "pump", km 150: 67, want 60
}
