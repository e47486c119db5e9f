package main

import (
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"strings"

	"ullage/planner"
)

// solve prints the plan of least cost of a problem file.
func solve(args []string, stdout, stderr io.Writer) int {
	if len(args) != 1 || isFlag(args[0]) {
		return wrong(stderr, "solve: give one file: ullage solve PROBLEM.json")
	}
	p, err := readProblem(args[0])
	if err != nil {
		return wrong(stderr, "solve: %v", err)
	}
	answer, nearest, err := planner.Answer(context.Background(), p, planner.Options{})
	if err != nil {
		return wrong(stderr, "solve: %s: %v", args[0], err)
	}
	if err := printJSON(stdout, answer); err != nil {
		return wrong(stderr, "solve: %v", err)
	}
	if answer.End != nil {
		return exitOK
	}
	fmt.Fprintf(stderr, "ullage: solve: %s\n", answer.Status)
	for _, r := range answer.Why {
		fmt.Fprintln(stderr, " ", r.Text)
	}
	if nearest != nil {
		fmt.Fprintf(stderr, "  what comes nearest to a plan, NOT VALID, visits %s and breaks:\n", stopsOf(nearest.Visits))
		for _, r := range nearest.Broken {
			fmt.Fprintln(stderr, "    ", r.Text)
		}
	}
	return exitInfeasible
}

func stopsOf(visits []planner.Visit) string {
	var out []string
	for _, v := range visits {
		out = append(out, v.Stop)
	}
	return cmp.Or(strings.Join(out, ", "), "nothing")
}

func readProblem(name string) (*planner.Problem, error) {
	b, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	return planner.Decode(name, b)
}

func printJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", " ")
	return e.Encode(v)
}

// isFlag is true for a word that no file is meant with.
func isFlag(arg string) bool { return len(arg) > 1 && arg[0] == '-' }

// wrong prints one line and returns the exit code for wrong input.
func wrong(stderr io.Writer, format string, args ...any) int {
	fmt.Fprintf(stderr, "ullage: "+format+"\n", args...)
	return exitUsage
}
