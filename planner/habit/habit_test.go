package habit_test

import (
	"fmt"
	"math"
	"testing"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/habit"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
	"ullage/planner/replay"
	"ullage/planner/solve"
)

// road is 400 km with a station every 100 km at these prices, 0.1 L a km, 60 L, 20 at the start.
func road(prices ...float64) *planner.Problem {
	p := &planner.Problem{Format: planner.ProblemFormat, LengthKm: 400,
		Drive: planner.Drive{MaxKmPerDay: 500, MaxMinPerDay: 900, DepartMin: 540, Pace: []planner.Pace{{ToKm: 400, MinPerKm: 1}}},
		Tanks: []planner.Tank{{ID: "fuel", Kind: planner.Supply, Capacity: 60, Reserve: 5, Start: 20, PerKm: 0.1}}}
	for i, price := range prices {
		p.Stops = append(p.Stops, planner.Stop{ID: fmt.Sprint(100 * (i + 1)), Km: float64(100 * (i + 1)), StopMin: 1, Serves: []planner.Service{{Tank: "fuel", Price: price}}})
	}
	return p
}

// bought lists what is bought where.
func bought(plan planner.Plan) string {
	s := ""
	for _, v := range plan.Visits {
		for _, y := range v.Serve {
			s += fmt.Sprintf("%s %s %.4g, ", v.Stop, y.Tank, y.Amount)
		}
	}
	return s
}

// Every number by hand.
func TestPumpByHand(t *testing.T) {
	serve := func(stop string, amount float64) planner.Visit {
		return planner.Visit{Stop: stop, Serve: []planner.Serve{{Tank: "fuel", Amount: amount}}}
	}
	for _, tc := range []struct {
		name   string
		prices []float64
		visits []planner.Visit
		want   string
	}{
		// 12 + 13 L at one price: at the first pump all 25 that the trip needs, and the second is not needed.
		{"equal prices", []float64{2, 2}, []planner.Visit{serve("100", 12), serve("200", 13)}, "100 fuel 25, "},
		// The dearer pump gives 12 L to get to the cheaper one: 15. The other 10 of 13 are 10.
		{"cheaper later", []float64{2, 1.5}, []planner.Visit{serve("100", 12), serve("200", 13)}, "100 fuel 15, 200 fuel 10, "},
		// 48.6 L of the 50 for which there is room: nobody stops that near the brim.
		{"full", []float64{2}, []planner.Visit{serve("100", 49.2)}, "100 fuel 50, "},
		// 3 L are less than a tenth of 60: the pump before sells them too.
		{"a drop", []float64{2, 2, 2}, []planner.Visit{serve("100", 22), serve("300", 3)}, "100 fuel 25, "},
		// 5 L are as well, but at the pump before they cost 15 more.
		{"a drop, but dear elsewhere", []float64{4, 9, 1}, []planner.Visit{serve("100", 20), serve("300", 5)}, "100 fuel 20, 300 fuel 5, "},
	} {
		t.Run(tc.name, func(t *testing.T) {
			p := road(tc.prices...)
			plan, err := replay.Plan(p, tc.visits)
			if err != nil {
				t.Fatal(err)
			}
			if got := bought(habit.Pump(p, plan)); got != tc.want {
				t.Errorf("%s, want %s", got, tc.want)
			}
		})
	}
}

// Two nights on 400 km: at 100 and 200 for 10 each, or at 133 and 267 for 11.
// The days of 100, 100 and 200 km give way to some of at most 134, for 2.
func TestEvenByHand(t *testing.T) {
	p := road()
	p.Drive.MaxKmPerDay, p.Nights = 210, &planner.Range{Min: 2, Max: 2}
	for _, s := range []struct{ km, fee float64 }{{100, 10}, {133, 11}, {200, 10}, {267, 11}} {
		p.Stops = append(p.Stops, planner.Stop{ID: fmt.Sprint(s.km), Km: s.km, Night: &planner.Night{Fee: s.fee, Nights: 1}})
	}
	p.Tanks[0].Start = 60
	plan := solved.Plan(t, p)
	got, err := habit.Even(t.Context(), p, plan, solve.Options{})
	if err != nil || plan.Cost != 20 || got.Cost != 22 || habit.Longest(p, plan) != 200 || habit.Longest(p, got) != 134 || got.Status != planner.Optimal {
		t.Errorf("%v for days of %v km, %v (%s) for %v, %v", plan.Cost, habit.Longest(p, plan), got.Cost, got.Status, habit.Longest(p, got), err)
	}
	for i := range p.Stops {
		p.Stops[i].Night.Fee *= 10 // 20 more on 200 are more than evenness may cost
	}
	plan = solved.Plan(t, p)
	if got, err := habit.Even(t.Context(), p, plan, solve.Options{}); err != nil || got.Cost != plan.Cost {
		t.Errorf("%v instead of %v, %v", got.Cost, plan.Cost, err)
	}
}

// Whatever the problem: every rule kept, not much dearer, no day longer, no stop more,
// and what is bought is whole fives, or fills the tank.
func TestHabitsOfMany(t *testing.T) {
	t.Parallel()
	evened, pumped := 0, 0
	for seed := range uint64(400) {
		p := plantest.Tiny(seed)
		plan := solved.Plan(t, p)
		if plan.End == nil {
			continue
		}
		even, err := habit.Even(t.Context(), p, plan, solve.Options{})
		if err != nil {
			t.Fatal(seed, err)
		}
		if err := audit.Check(p, even); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		if was, is := habit.Longest(p, plan), habit.Longest(p, even); is > was+1e-9 || even.Cost > plan.Cost+math.Max(5, 0.02*plan.Cost)+1e-9 {
			t.Errorf("seed %d: %v km for %v, was %v for %v", seed, is, even.Cost, was, plan.Cost)
		} else if is < was {
			evened++
		}
		got := habit.Pump(p, plan)
		if err := audit.Check(p, got); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		if len(got.Visits) > len(plan.Visits) || got.Bound > plan.Bound+1e-9 {
			t.Errorf("seed %d: %d visits, bound %v, was %d, %v", seed, len(got.Visits), got.Bound, len(plan.Visits), plan.Bound)
		}
		if bought(got) != bought(plan) {
			pumped++
		}
	}
	t.Logf("%d evened, %d pumped", evened, pumped)
	if evened < 5 || pumped < 30 {
		t.Error("want more to look at")
	}
}
