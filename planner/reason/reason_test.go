package reason_test

import (
	"context"
	"testing"

	"ullage/planner"
	"ullage/planner/reason"
	"ullage/planner/solve"
)

func explain(t *testing.T, p *planner.Problem) []planner.Reason {
	t.Helper()
	ctx, cancel := context.WithCancel(t.Context())
	defer cancel()
	opt := solve.Options{MaxLabels: 20_000}
	plan, err := solve.Solve(ctx, p, opt)
	if err != nil {
		t.Fatal(err)
	}
	var out []planner.Reason
	if _, _, err := reason.Refuse(ctx, p, plan, opt, func(reasons []planner.Reason) { out = reasons; cancel() }); err != nil {
		t.Fatal(err)
	}
	for _, r := range out {
		t.Logf("%s %s %v–%v missing %v: %+v", r.Kind, r.Limit, r.FromKm, r.ToKm, r.Missing, r.Changes)
	}
	return out
}

func reasonFor(reasons []planner.Reason, limit string) *planner.Reason {
	for i, r := range reasons {
		if r.Limit == limit {
			return &reasons[i]
		}
	}
	return nil
}

// gap is 300 km with fuel for 170 from the start, and places at km 60 and 250:
// after filling up at 60 (30 L, 3 reserve: 270 km) all is well.
func gap() *planner.Problem {
	return &planner.Problem{
		Format: planner.ProblemFormat, LengthKm: 300,
		Drive: planner.Drive{MaxKmPerDay: 400, MaxMinPerDay: 600, Pace: []planner.Pace{{ToKm: 300, MinPerKm: 1}}},
		Tanks: []planner.Tank{{ID: "fuel", Kind: planner.Supply, Capacity: 30, Reserve: 3, Start: 20, PerKm: 0.1}},
		Stops: []planner.Stop{{ID: "b", Km: 250, Serves: []planner.Service{{Tank: "fuel", Price: 2}}}, {ID: "n", Km: 260, Night: &planner.Night{Nights: 1}}},
	}
}
