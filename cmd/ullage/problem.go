package main

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"
	"time"

	"ullage/cmd/ullage/progress"
	"ullage/data/problemfile"
	"ullage/data/wrong"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/reason"
)

// A solveRun prints the plan of least cost of a problem file, or the best one
// found in time.
type solveRun struct{ within time.Duration }

func setUpSolve(set *flag.FlagSet) action {
	s := &solveRun{}
	set.DurationVar(&s.within, "within", 30*time.Second, "")
	return s.run
}

func (s *solveRun) run(ctx context.Context, args []string, to streams) int {
	if len(args) != 1 {
		return to.wrong("solve: give one file: ullage solve PROBLEM.json")
	}
	p, err := readProblem(args[0])
	if err != nil {
		return to.failed("solve", err)
	}
	ctx, cancel := context.WithTimeout(ctx, s.within)
	defer cancel()
	line := progress.To(to.err)
	line.Show(voice.Text("plan.planning"))
	plan, nearest, err := answerTo(ctx, p)
	line.Clear()
	if err != nil {
		return to.wrong("solve: %s: %v", args[0], err)
	}
	if err := printJSON(to.out, plan); err != nil {
		return to.printed(err)
	}
	if plan.End != nil {
		return exitOK
	}
	s.refused(to.err, p, plan, nearest)
	return exitInfeasible
}

// refused says why there is no plan.
func (s *solveRun) refused(w io.Writer, p *planner.Problem, plan planner.Plan, nearest *reason.Nearest) {
	fmt.Fprintf(w, "ullage: solve: %s\n", plan.Status)
	if plan.Status == planner.Unknown {
		fmt.Fprintln(w, " ", voice.Text("solve.unknown", fact.V{"within": fact.Text(s.within.String())}))
	}
	for _, r := range plan.Why {
		fmt.Fprintln(w, " ", voice.Fact(r.Fact(p)))
		for _, c := range r.Changes {
			fmt.Fprintln(w, "    ", voice.Fact(c.Fact(p, "")))
		}
	}
	if nearest != nil {
		fmt.Fprintln(w, " ", voice.Text("solve.nearest", fact.V{"stops": fact.Texts(stopsOf(nearest.Visits))}))
		for _, r := range nearest.Broken {
			fmt.Fprintln(w, "    ", voice.Fact(r.Fact(p)))
		}
	}
}

func stopsOf(visits []planner.Visit) []string {
	var out []string
	for _, v := range visits {
		out = append(out, v.Stop)
	}
	return out
}

func readProblem(name string) (*planner.Problem, error) {
	b, err := os.ReadFile(name)
	if err != nil {
		return nil, wrong.In(name, err)
	}
	return problemfile.Decode(name, b)
}

// printJSON prints a value for programs.
func printJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", " ")
	return e.Encode(v)
}
