package planner_test

import (
	"context"
	"fmt"
	"testing"

	. "ullage/planner"
)

// BenchmarkSolve solves made problems of growing length; all but the longest
// to proven optimality.
func BenchmarkSolve(b *testing.B) {
	for _, km := range []float64{300, 500, 800, 1000} {
		for _, backup := range []bool{false, true} {
			b.Run(fmt.Sprintf("%vkm/backup=%v", km, backup), func(b *testing.B) {
				var problems []*Problem
				for seed := range uint64(5) {
					problems = append(problems, made{LengthKm: km, Seed: seed, Backup: backup}.problem())
				}
				b.ReportAllocs()
				n := 0
				for b.Loop() {
					if _, err := Solve(context.Background(), problems[n%len(problems)], Options{}); err != nil {
						b.Fatal(err)
					}
					n++
				}
			})
		}
	}
}
