package solve_test

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"ullage/planner"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
	"ullage/planner/solve"
)

var (
	update    = flag.Bool("update", false, "rewrite testdata/solved.json with a MILP solver")
	highsKm   = flag.Int("km", 300, "longest problem, in km, that TestAgainstHiGHS compares")
	highsSecs = flag.Float64("highs-seconds", 60, "time limit of the MILP solver for each problem of TestAgainstHiGHS")
)

// A solvedRow is a made problem with the optimum that a MILP solver proved.
type solvedRow struct {
	plantest.Made
	Optimum float64 `json:"optimum"`
	Solver  string  `json:"solver"`
}

var solvedFile = filepath.Join("testdata", "solved.json")

// solvedSample is what -update solves.
func solvedSample() []plantest.Made {
	var out []plantest.Made
	for seed := uint64(1); seed <= 12; seed++ {
		out = append(out, plantest.Made{LengthKm: 150, Seed: seed}, plantest.Made{LengthKm: 200, Seed: seed, Nights: 1}, plantest.Made{LengthKm: 300, Seed: seed},
			plantest.Made{LengthKm: 300, Seed: seed, Backup: true})
	}
	for seed := uint64(1); seed <= 6; seed++ {
		out = append(out, plantest.Made{LengthKm: 400, Seed: seed, Nights: 3}, plantest.Made{LengthKm: 500, Seed: seed}, plantest.Made{LengthKm: 500, Seed: seed, Backup: true})
	}
	for seed := uint64(1); seed <= 3; seed++ {
		out = append(out, plantest.Made{LengthKm: 800, Seed: seed})
	}
	for seed := uint64(1); seed <= 4; seed++ {
		for stays := 2; stays <= 4; stays++ {
			out = append(out, plantest.Made{LengthKm: 75, Seed: seed, Battery: true, Stays: stays})
		}
	}
	return out
}

// TestSolvedTable compares the solver with optima of made problems that a
// MILP solver proved: go test ./planner/solve -run TestSolvedTable -update -highs DIR.
func TestSolvedTable(t *testing.T) {
	t.Parallel()
	if *update {
		writeSolved(t)
	}
	b, err := os.ReadFile(solvedFile)
	if err != nil {
		t.Fatal(err)
	}
	var rows []solvedRow
	if err := json.Unmarshal(b, &rows); err != nil {
		t.Fatal(err)
	}
	if len(rows) < 40 {
		t.Fatalf("%d rows, want 40 or more", len(rows))
	}
	for _, row := range rows {
		t.Run(row.Made.String(), func(t *testing.T) {
			plan := solved.Plan(t, row.Problem())
			if !checkOptimum(t, plan, row.Optimum) {
				t.Errorf("%s at %v, bound %v; %s proved %v", plan.Status, plan.Cost, plan.Bound, row.Solver, row.Optimum)
			}
		})
	}
}

func writeSolved(t *testing.T) {
	t.Helper()
	solver := findMILP(t)
	sample := solvedSample()
	var problems []*planner.Problem
	for _, m := range sample {
		problems = append(problems, m.Problem())
	}
	var out bytes.Buffer
	out.WriteString("[")
	for i, r := range solver.solve(t, 300, writeLPs(t, problems)) {
		if r.Status == "infeasible" {
			t.Errorf("%v: infeasible: choose another seed", sample[i])
			continue
		}
		if r.Status != "optimal" {
			t.Logf("%v: left out: %s", sample[i], r.Status)
			continue
		}
		b, err := json.Marshal(solvedRow{sample[i], plantest.Round(r.Objective, 6), solver.name})
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&out, "%s\n%s", map[bool]string{true: ","}[out.Len() > 1], b)
	}
	out.WriteString("\n]\n")
	if err := os.WriteFile(solvedFile, out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

// TestMILPSample solves a few made problems with a MILP solver now, and
// compares. Where no solver is installed, TestSolvedTable stands in.
func TestMILPSample(t *testing.T) {
	t.Parallel()
	solver := findMILP(t)
	sample := []plantest.Made{{LengthKm: 100, Seed: 21}, {LengthKm: 120, Seed: 22, Backup: true}, {LengthKm: 150, Seed: 23, Nights: 1}, {LengthKm: 150, Seed: 24}}
	var problems []*planner.Problem
	for _, m := range sample {
		problems = append(problems, m.Problem())
	}
	for i, r := range solver.solve(t, 60, writeLPs(t, problems)) {
		if r.Status != "optimal" {
			t.Errorf("%v: %s says %s", sample[i], solver.name, r.Status)
			continue
		}
		if !checkOptimum(t, solved.Plan(t, problems[i]), r.Objective) {
			t.Errorf("%v: not proven; %s: %v", sample[i], solver.name, r.Objective)
		}
	}
}

// TestAgainstHiGHS prints the comparison with HiGHS on this machine, in one run:
//
//	go test ./planner/solve -run TestAgainstHiGHS -v -timeout 1h -highs DIR -km 1000
//
// Five made problems for each length; times are medians; the planner's is the
// best of three runs of each. Objectives must agree to 1e-6 where HiGHS proves its own.
func TestAgainstHiGHS(t *testing.T) {
	solver, ok := findHiGHS(t)
	if !ok {
		noMILP(t, "HiGHS is not named: set ULLAGE_HIGHS or -highs to the folder of the npm package highs")
	}
	t.Log(solver.name)
	t.Logf("%6s %6s %12s %12s %10s %8s %8s", "km", "stops", "planner s", "HiGHS s", "faster", "proven", "HiGHS")
	for _, km := range []float64{100, 200, 300, 500, 800, 1000, 2000, 3000} {
		if km > float64(*highsKm) {
			break
		}
		compareLength(t, solver, km)
	}
}

func compareLength(t *testing.T, solver milpSolver, km float64) {
	t.Helper()
	var problems []*planner.Problem
	for seed := uint64(101); seed <= 105; seed++ {
		problems = append(problems, plantest.Made{LengthKm: km, Seed: seed}.Problem())
	}
	results := solver.solve(t, *highsSecs, writeLPs(t, problems))
	var own, theirs, ratios []float64
	proven, theirsProven := 0, 0
	for i, p := range problems {
		plan, seconds := timed(t, p)
		if plan.Status == planner.Optimal {
			proven++
		}
		r := results[i]
		if r.Status == "optimal" {
			theirsProven++
			checkOptimum(t, plan, r.Objective)
		}
		own, theirs, ratios = append(own, seconds), append(theirs, r.Seconds), append(ratios, r.Seconds/seconds)
	}
	t.Logf("%6.0f %6d %12.6f %12.3f %9.0fx %6d/%d %6d/%d", km, len(problems[0].Stops), median(own), median(theirs), median(ratios), proven, len(problems), theirsProven, len(problems))
}

// timed is the best of three runs.
func timed(t *testing.T, p *planner.Problem) (planner.Plan, float64) {
	t.Helper()
	var plan planner.Plan
	best := time.Duration(1<<63 - 1)
	for range 3 {
		from := time.Now()
		got, err := solve.Solve(context.Background(), p, solve.Options{})
		if err != nil {
			t.Fatal(err)
		}
		best = min(best, time.Since(from))
		plan = got
	}
	return plan, best.Seconds()
}

func median(xs []float64) float64 {
	s := slices.Sorted(slices.Values(xs))
	return s[len(s)/2]
}
