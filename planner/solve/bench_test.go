package solve_test

import (
	"context"
	"fmt"
	"testing"

	"ullage/planner"
	"ullage/planner/internal/plantest"
	"ullage/planner/solve"
)

// BenchmarkSolve solves made problems of growing length; all but the longest
// to proven optimality.
func BenchmarkSolve(b *testing.B) {
	for _, km := range []float64{300, 500, 800, 1000} {
		for _, backup := range []bool{false, true} {
			b.Run(fmt.Sprintf("%vkm/backup=%v", km, backup), func(b *testing.B) {
				var problems []*planner.Problem
				for seed := range uint64(5) {
					problems = append(problems, plantest.Made{LengthKm: km, Seed: seed, Backup: backup}.Problem())
				}
				b.ReportAllocs()
				n := 0
				for b.Loop() {
					if _, err := solve.Solve(context.Background(), problems[n%len(problems)], solve.Options{}); err != nil {
						b.Fatal(err)
					}
					n++
				}
			})
		}
	}
}
