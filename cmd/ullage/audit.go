package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"

	"ullage/data/problemfile"
	"ullage/data/wrong"
	"ullage/planner"
	"ullage/planner/audit"
)

func setUpAudit(*flag.FlagSet) action { return auditFiles }

// auditFiles replays a plan file against a problem file.
func auditFiles(_ context.Context, args []string, to streams) int {
	if len(args) != 2 || isFlag(args[0]) || isFlag(args[1]) {
		return to.wrong("audit: give two files: ullage audit PROBLEM.json PLAN.json")
	}
	p, err := readProblem(args[0])
	if err != nil {
		return to.failed("audit", err)
	}
	b, err := os.ReadFile(args[1])
	if err != nil {
		return to.failed("audit", wrong.In(args[1], err))
	}
	plan, err := problemfile.DecodePlan(args[1], b)
	if err != nil {
		return to.failed("audit", err)
	}
	if err := audit.Check(p, plan); err != nil {
		what := err.Error()
		if broken := (*planner.Broken)(nil); errors.As(err, &broken) {
			what = voice.Fact(broken.Fact(p))
		}
		fmt.Fprintf(to.err, "ullage: audit: %s: %s\n", args[1], what)
		return exitBroken
	}
	_, err = fmt.Fprintf(to.out, "%s keeps every rule: %s, cost %.4f, bound %.4f\n", args[1], plan.Status, plan.Cost, plan.Bound)
	return to.printed(err)
}
