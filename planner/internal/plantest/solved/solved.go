// Package solved has the audited answers of the solver for tests of what is made
// of plans. It stands apart from plantest, whose problems the solver's own tests use.
package solved

import (
	"context"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/solve"
)

// A failer is a test or a drawn one.
type failer interface {
	Helper()
	Fatal(args ...any)
}

// Plan is the solver's answer to a problem; the test ends where it is none or fails the audit.
func Plan(t failer, p *planner.Problem) planner.Plan {
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
