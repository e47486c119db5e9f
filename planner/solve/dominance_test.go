package solve_test

import (
	"math"
	"testing"

	"ullage/planner"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
)

// This file has problems in which two partial plans differ in one thing only, and
// the one that looks better must not push the other out. They were drawn by chance
// and cut down to what parts the two.

// parted is a way of 1 km a minute with a tank that nothing uses.
func parted(lengthKm float64, stops ...planner.Stop) *planner.Problem {
	return &planner.Problem{Format: planner.ProblemFormat, LengthKm: lengthKm,
		Drive: planner.Drive{MaxKmPerDay: 1000, MaxMinPerDay: 1000, Pace: []planner.Pace{{ToKm: lengthKm, MinPerKm: 1}}},
		Tanks: []planner.Tank{{ID: "fuel", Kind: planner.Supply, Capacity: 100, Start: 100}},
		Stops: stops}
}

// sleeping is a place for one night, or more.
func sleeping(id string, km, fee float64, nights int) planner.Stop {
	return planner.Stop{ID: id, Km: km, Night: &planner.Night{Fee: fee, Nights: nights}}
}

func TestOneThingParts(t *testing.T) {
	for _, tc := range []struct {
		name string
		cost float64
		make func() *planner.Problem
	}{
		// Draining at the first stop costs minutes and no money, and leaves more room.
		// Who does not has the minutes for free fuel at the second.
		{"minutes left of the day", 1000, func() *planner.Problem {
			p := parted(500,
				planner.Stop{ID: "dear", Km: 200, Serves: []planner.Service{{Tank: "grey", Min: 100}, {Tank: "fuel", Price: 100}}},
				planner.Stop{ID: "free", Km: 300, StopMin: 100, Serves: []planner.Service{{Tank: "fuel"}}})
			p.Drive.MaxMinPerDay = 600
			p.Tanks[0].Start, p.Tanks[0].PerKm = 20, 0.1
			p.Tanks = append(p.Tanks, planner.Tank{ID: "grey", Kind: planner.Waste, Capacity: 100, Start: 50})
			return p
		}},
		// Two of three nights: for 20, for 25 L, and for 10 and 45 L, where 50 L are aboard and
		// the second place sells more at 1 a litre. Who saves the 20 has a night less.
		{"nights still wanted", 20, func() *planner.Problem {
			p := parted(300, sleeping("a", 100, 20, 1), sleeping("b", 200, 0, 1), sleeping("c", 200, 10, 1))
			p.Tanks[0].Start = 50
			p.Stops[1].Serves = []planner.Service{{Tank: "fuel", Price: 1}}
			p.Stops[1].Night.Use = map[string]float64{"fuel": 25}
			p.Stops[2].Night.Use = map[string]float64{"fuel": 45}
			p.Nights = &planner.Range{Min: 2, Max: 2}
			return p
		}},
		// Two nights for nothing at the first place or one for 100 at the second: only
		// one leaves room for the night that comes with fuel.
		{"nights still allowed", 100, func() *planner.Problem {
			p := parted(400, sleeping("one", 0, 100, 1), sleeping("two", 0, 0, 2), sleeping("fuel", 300, 0, 1))
			p.Stops[2].Serves = []planner.Service{{Tank: "fuel", GuestsOnly: true}}
			p.Nights = &planner.Range{Min: 2, Max: 2}
			p.Tanks[0].Start, p.Tanks[0].PerKm = 30, 0.1
			return p
		}},
		// A place that must be called at opens on the second day: a night makes nothing
		// cheaper, and without one nobody can wait that long.
		{"the day on which doors open", 0, func() *planner.Problem {
			p := parted(100, sleeping("a", 0, 0, 1), planner.Stop{ID: "must", Km: 100, Required: true, Open: [][2]float64{{1500, 1700}}})
			return p
		}},
		// As before, with two nights for nothing that come too late, and one for 100 in time.
		{"the day on which doors close", 100, func() *planner.Problem {
			p := parted(200, sleeping("one", 0, 100, 1), sleeping("two", 0, 0, 2), sleeping("b", 100, 0, 1))
			p.Stops[2].Open = [][2]float64{{1900, 2100}}
			p.Drive.MaxKmPerDay = 100
			return p
		}},
		// A night far back for 50 or near for nothing, to be at the place that opens late on
		// the next day: who is nearer in the morning waits 660 min there instead of 160, at
		// 100 an hour.
		{"money for waiting", 50 + 160.0/60*100, func() *planner.Problem {
			p := parted(100, sleeping("far back", 0, 50, 1), sleeping("near", 100, 0, 1),
				planner.Stop{ID: "must", Km: 100, Required: true, Open: [][2]float64{{2100, 2300}}})
			p.TimeCostPerH, p.Drive.Pace[0].MinPerKm = 100, 5
			return p
		}},
	} {
		t.Run(tc.name, func(t *testing.T) {
			p := tc.make()
			if brute := plantest.Brute(p); math.Abs(brute-tc.cost) > 1e-9 {
				t.Errorf("by trying everything %v, want %v", brute, tc.cost)
			}
			if plan := solved.Plan(t, p); plan.Status != planner.Optimal || math.Abs(plan.Cost-tc.cost) > 1e-6 {
				t.Errorf("%s with cost %v, want %v", plan.Status, plan.Cost, tc.cost)
			}
		})
	}
}
