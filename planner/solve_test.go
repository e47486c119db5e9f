package planner_test

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"

	. "ullage/planner"
)

func solved(t *testing.T, p *Problem) Plan {
	t.Helper()
	plan, err := Solve(context.Background(), p, Options{})
	if err != nil {
		t.Fatal(err)
	}
	return plan
}

// TestSolveAgainstBruteForce: -tiny and -seed say how many problems, and which.
func TestSolveAgainstBruteForce(t *testing.T) {
	for seed := *tinySeed; seed < *tinySeed+uint64(*tinyCount); seed++ {
		p := tiny(seed)
		want := brute(p)
		got, err := Solve(context.Background(), p, Options{})
		if err != nil {
			t.Errorf("seed %d: %v", seed, err)
			continue
		}
		if math.IsInf(want, 1) {
			if got.Status != Infeasible {
				t.Errorf("seed %d: %s at %v, brute force: infeasible", seed, got.Status, got.Cost)
			}
		} else if got.Status != Optimal || !near(got.Cost, want) {
			t.Errorf("seed %d: %s at %v (bound %v), brute force: %v", seed, got.Status, got.Cost, got.Bound, want)
		}
	}
}

// TestSolvePublishedCases: sources are named in the table.
func TestSolvePublishedCases(t *testing.T) {
	for _, tc := range []struct {
		file string
		want float64
	}{
		{"lin", 75.80},             // Lin, slides on refuelling a fixed path
		{"biola1", 28},             // Biola University, fixed path refueling data set, case 1
		{"biola2", 162},            // same, case 2; GLPK and two greedy methods
		{"kalvelagen", 218.977558}, // E. Kalvelagen, "The gas station problem", 2019; GLPK and HiGHS
		{"t1", 282.3296},           // worked case T1: GLPK, CBC, HiGHS and brute force agree
		{"t1_75_40", 322.3842},
		{"t1_75_60", 285.4234},
	} {
		t.Run(tc.file, func(t *testing.T) {
			b, err := os.ReadFile(filepath.Join("..", "..", "shared", "reference", "cases", tc.file+".json"))
			if err != nil {
				t.Skip("no shared cases here: ", err)
			}
			var p Problem
			if err := json.Unmarshal(b, &p); err != nil {
				t.Fatal(err)
			}
			if got := solved(t, &p); got.Status != Optimal || math.Abs(got.Cost-tc.want) > 1e-4 {
				t.Errorf("%s at %v, want optimal at %v", got.Status, got.Cost, tc.want)
			}
		})
	}
}
