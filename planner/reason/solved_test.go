package reason_test

import (
	"context"
	"testing"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/solve"
)

// solved is the audited answer of the solver.
func solved(t testing.TB, p *planner.Problem) planner.Plan {
	t.Helper()
	plan, err := solve.Solve(context.Background(), p, solve.Options{})
	if err == nil {
		err = audit.Check(p, plan)
	}
	if err != nil {
		t.Fatal(err)
	}
	return plan
}
