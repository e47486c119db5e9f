package main

import (
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"ullage/data/problemfile"

	"ullage/planner"
)

const solveUsage = "ullage solve [-within TIME] PROBLEM.json"

// solveFile prints the plan of least cost of a problem file, or the best one found in time.
func solveFile(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("solve", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	within := flags.Duration("within", 30*time.Second, "time to look for a better plan")
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		fmt.Fprintln(stdout, "usage:", solveUsage)
		return exitOK
	case err != nil:
		return wrong(stderr, "solve: %v; usage: %s", err, solveUsage)
	case flags.NArg() != 1:
		return wrong(stderr, "solve: give one file: %s", solveUsage)
	}
	name := flags.Arg(0)
	p, err := readProblem(name)
	if err != nil {
		return wrong(stderr, "solve: %v", err)
	}
	ctx, cancel := context.WithTimeout(context.Background(), *within)
	defer cancel()
	answer, nearest, err := answerTo(ctx, p)
	if err != nil {
		return wrong(stderr, "solve: %s: %v", name, err)
	}
	if err := printJSON(stdout, answer); err != nil {
		return wrong(stderr, "solve: %v", err)
	}
	if answer.End != nil {
		return exitOK
	}
	fmt.Fprintf(stderr, "ullage: solve: %s\n", answer.Status)
	if answer.Status == planner.Unknown {
		fmt.Fprintf(stderr, "  neither a plan nor a proof that there is none was found in %v: give it more, -within 5m\n", *within)
	}
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
	return problemfile.Decode(name, b)
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
