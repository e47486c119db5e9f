package solve_test

import (
	"context"
	"testing"

	"ullage/planner"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
	"ullage/planner/solve"
)

// TestAtLeastSomeNights: a range of nights without a real upper end is as
// easily proven as one with: few partial plans are enough.
func TestAtLeastSomeNights(t *testing.T) {
	p := plantest.Made{LengthKm: 300, Seed: 1, Nights: 4}.Problem()
	exact, err := solve.Solve(context.Background(), p, solve.Options{})
	if err != nil || exact.Status != planner.Optimal {
		t.Fatalf("4 nights: %v, %v", exact.Status, err)
	}
	p.Nights.Max = 999
	open, err := solve.Solve(context.Background(), p, solve.Options{MaxLabels: 50_000})
	if err != nil || open.Status != planner.Optimal || open.Cost > exact.Cost+1e-6 {
		t.Errorf("4 nights or more: %v with cost %v, %v; want it proven, and not above %v", open.Status, open.Cost, err, exact.Cost)
	}
}

// TestLongStays: short trips of long stays with every tank, a leisure battery
// among them, are proven with few partial plans. The optima are checked in
// TestSolvedTable.
func TestLongStays(t *testing.T) {
	t.Parallel()
	for seed := range uint64(10) {
		m := plantest.Made{LengthKm: 75, Seed: seed, Battery: true, Stays: 2 + int(seed)%6}
		plan, err := solve.Solve(context.Background(), m.Problem(), solve.Options{MaxLabels: 20_000})
		if err != nil || plan.Status != planner.Optimal && plan.Status != planner.Infeasible {
			t.Errorf("%v: %v, cost %v, bound %v, %v; want a proof", m, plan.Status, plan.Cost, plan.Bound, err)
		}
	}
}

// TestManyNights: more nights than the way forces are wanted, too many to count
// in the bound.
func TestManyNights(t *testing.T) {
	t.Parallel()
	m := plantest.Made{LengthKm: 2900, Seed: 3, Nights: 14}
	plan, err := solve.Solve(context.Background(), m.Problem(), solve.Options{MaxLabels: 50_000})
	if err != nil || plan.Status != planner.Optimal {
		t.Errorf("%v: %v, cost %v, bound %v, %v; want a proof", m, plan.Status, plan.Cost, plan.Bound, err)
	}
}

// TestMoreNightsThanPlaces: where too many nights are wanted to count, and there
// are not that many places, an answer comes all the same.
func TestMoreNightsThanPlaces(t *testing.T) {
	p := plantest.Made{LengthKm: 200, Seed: 1}.Problem()
	p.Nights = &planner.Range{Min: 30, Max: 30}
	for _, tank := range p.Tanks[2:] { // none of which may be what is to blame
		for i := range p.Stops {
			if n := p.Stops[i].Night; n != nil {
				n.Use[tank.ID] = 0
			}
		}
	}
	plan, err := solve.Solve(context.Background(), p, solve.Options{})
	if err != nil || plan.Status != planner.Infeasible {
		t.Errorf("%v, %v; want no plan", plan.Status, err)
	}
}

// TestHardTripsHaveAPlan: on long trips with a battery that a day's drive hardly
// charges, and with places that close at times, there is a plan to show though
// no proof is near.
func TestHardTripsHaveAPlan(t *testing.T) {
	t.Parallel()
	for _, m := range []plantest.Made{{LengthKm: 2000, Seed: 1, Battery: true}, {LengthKm: 2000, Seed: 2, Battery: true},
		{LengthKm: 700, Seed: 510, Battery: true, Open: true}, {LengthKm: 700, Seed: 511, Battery: true, Open: true}} {
		ctx, cancel := context.WithCancel(context.Background())
		plan, err := solve.Solve(ctx, m.Problem(), solve.Options{Progress: func(planner.Plan) { cancel() }})
		cancel()
		if err != nil || plan.End == nil {
			t.Errorf("%v: %v, bound %v, %v; want a plan", m, plan.Status, plan.Bound, err)
		}
	}
}

// TestNightAfterItsMorning: a night that begins after its own next departure is none,
// however long a day on the road may be.
func TestNightAfterItsMorning(t *testing.T) {
	for open, want := range map[float64]planner.Status{1440: planner.Optimal, 1440.001: planner.Infeasible} {
		p := &planner.Problem{Format: planner.ProblemFormat, LengthKm: 200,
			Drive: planner.Drive{MaxKmPerDay: 100, MaxMinPerDay: 5000, Pace: []planner.Pace{{ToKm: 200, MinPerKm: 1}}},
			Tanks: []planner.Tank{{ID: "fuel", Kind: planner.Supply, Capacity: 30, Start: 30, PerKm: 0.1}},
			Stops: []planner.Stop{{ID: "n", Km: 100, Open: [][2]float64{{open, 1500}}, Night: &planner.Night{Nights: 1}}}}
		if plan := solved.Plan(t, p); plan.Status != want {
			t.Errorf("open from minute %v: %s, want %s", open, plan.Status, want)
		}
	}
}
