package planner_test

import (
	"context"
	"testing"

	. "ullage/planner"
)

// TestWhy: each problem is made infeasible by one limit, which must be named
// with what is missing; the numbers are worked out by hand.
func TestWhy(t *testing.T) {
	base := func() *Problem {
		return &Problem{
			Format: ProblemFormat, LengthKm: 200,
			Drive: Drive{MaxKmPerDay: 300, MaxMinPerDay: 600, DepartMin: 540, Pace: []Pace{{ToKm: 200, MinPerKm: 1}}},
			Tanks: []Tank{{ID: "diesel", Kind: Supply, Capacity: 50, Reserve: 5, Start: 30, PerKm: 0.1}},
			Stops: []Stop{{ID: "pump", Km: 100, Serves: []Service{{Tank: "diesel", Price: 1.5, Min: 5}}}},
		}
	}
	for _, tc := range []struct {
		name    string
		change  func(p *Problem)
		limit   string
		missing float64
	}{
		{"10 L for 100 km leave 2 of 12, reserve is 5", func(p *Problem) { p.Tanks[0].Start = 12 }, "diesel", 3},
		{"200 km in one day of 150", func(p *Problem) { p.Drive.MaxKmPerDay = 150 }, "km", 50},
		{"200 min in one day of 150", func(p *Problem) { p.Drive.MaxMinPerDay = 150 }, "min", 50},
		{"a night is wanted, none is offered", func(p *Problem) { p.Nights = &Range{Min: 1, Max: 2} }, "nights", 1},
		{"closes at 9:30, reached at 10:40", func(p *Problem) {
			p.Stops[0].Required = true
			p.Stops[0].Open = [][2]float64{{0, 570}}
		}, "open", 0},
	} {
		t.Run(tc.name, func(t *testing.T) {
			p := base()
			tc.change(p)
			plan, err := Solve(context.Background(), p, Options{})
			if err != nil || plan.Status != Infeasible {
				t.Fatalf("Solve = %s, %v, want infeasible", plan.Status, err)
			}
			for _, r := range plan.Why {
				if r.Limit == tc.limit && r.Missing >= tc.missing && r.Missing <= tc.missing*1.01+0.001 {
					return
				}
			}
			t.Errorf("why = %+v, want %s short by %v", plan.Why, tc.limit, tc.missing)
		})
	}
}
