package main

import (
	"errors"
	"fmt"
	"io"
	"os"

	"ullage/data/problemfile"

	"ullage/planner"
	"ullage/planner/audit"
)

// auditFile replays a plan file against a problem file.
func auditFile(args []string, stdout, stderr io.Writer) int {
	if len(args) != 2 || isFlag(args[0]) || isFlag(args[1]) {
		return wrong(stderr, "audit: give two files: ullage audit PROBLEM.json PLAN.json")
	}
	p, err := readProblem(args[0])
	if err != nil {
		return wrong(stderr, "audit: %v", err)
	}
	b, err := os.ReadFile(args[1])
	if err != nil {
		return wrong(stderr, "audit: %v", err)
	}
	answer, err := problemfile.DecodePlan(args[1], b)
	if err != nil {
		return wrong(stderr, "audit: %v", err)
	}
	if err := audit.Check(p, answer); err != nil {
		var broken *planner.Broken
		if errors.As(err, &broken) {
			err = broken
		}
		fmt.Fprintf(stderr, "ullage: audit: %s: %v\n", args[1], err)
		return exitBroken
	}
	fmt.Fprintf(stdout, "%s keeps every rule: %s, cost %.4f, bound %.4f\n", args[1], answer.Status, answer.Cost, answer.Bound)
	return exitOK
}
