package bound

import (
	"math"
	"slices"
	"testing"

	"ullage/planner"
	"ullage/planner/internal/model"
	"ullage/planner/internal/plantest"
)

// TestShares: the shares of a visit add up to what it costs, none is below
// nothing, and what a tank gives away leaves its own bound of the whole trip as it was.
func TestShares(t *testing.T) {
	given := 0.0
	for file, p := range plantest.BoundProblems(t) {
		m := model.New(p)
		worth, atNight, single := Worths(m), BindingTanks(m), singleTanks(m)
		s := newShares(m, worth, atNight, single)
		for k, tank := range single {
			start := model.NewState(len(m.Tanks))
			for u := range m.Tanks {
				start.Hand[u] = m.Tanks[u].Start
			}
			never := func() bool { return false }
			paid := newTank(m, tank, worth, s.of[k+1], nil, never).From(start, 0)
			gives := s.gives(k + 1)
			after := newTank(m, tank, worth, s.of[k+1], func(i int, spare float64) float64 {
				given += spare
				return gives(i, spare)
			}, never).From(start, 0)
			if math.Abs(after-paid) > 1e-6*(1+math.Abs(paid)) {
				t.Errorf("%s: the bound of tank %d is %v before giving, %v after", file, tank, paid, after)
			}
		}
		for i := range m.Stops {
			sum, visit := 0.0, visitCost(m, &m.Stops[i], worth)
			for g := range s.of {
				sum += s.of[g][i]
				if s.of[g][i] < -1e-9 {
					t.Errorf("%s: group %d has a share of %v of stop %d", file, g, s.of[g][i], i)
				}
			}
			if math.Abs(sum-visit) > 1e-9*(1+visit) {
				t.Errorf("%s: the shares of stop %d add up to %v, the visit costs %v", file, i, sum, visit)
			}
		}
	}
	if given == 0 {
		t.Error("nothing was given in any of these problems")
	}
}

// TestFirstWeights: by hand, what a visit costs is divided to begin with among the
// nights and the dearest tank that it serves.
func TestFirstWeights(t *testing.T) {
	fuel, gas, water := planner.Service{Tank: "fuel", Price: 2}, planner.Service{Tank: "gas", Price: 1}, planner.Service{Tank: "water"}
	p := &planner.Problem{Format: planner.ProblemFormat, LengthKm: 100, Drive: planner.Drive{MaxKmPerDay: 100, MaxMinPerDay: 100, Pace: []planner.Pace{{ToKm: 100, MinPerKm: 1}}},
		Tanks: []planner.Tank{{ID: "fuel", Kind: planner.Supply, Capacity: 10, PerKm: 0.1}, {ID: "gas", Kind: planner.Supply, Capacity: 10, PerKm: 0.1}, {ID: "water", Kind: planner.Supply, Capacity: 10}}}
	stops := []struct {
		planner.Stop
		want []float64
	}{
		{planner.Stop{Serves: []planner.Service{fuel}}, []float64{0, 1, 0}},
		{planner.Stop{Serves: []planner.Service{gas}}, []float64{0, 0, 1}},
		{planner.Stop{Serves: []planner.Service{gas, fuel}}, []float64{0, 1, 0}},
		{planner.Stop{Serves: []planner.Service{gas, water}}, []float64{1, 0, 0}},
		{planner.Stop{Serves: []planner.Service{fuel, water}}, []float64{0.5, 0.5, 0}},
		{planner.Stop{Serves: []planner.Service{fuel, water}, Night: &planner.Night{Nights: 1, Use: map[string]float64{"water": 5}}}, []float64{2. / 3, 1. / 3, 0}},
		{planner.Stop{Serves: []planner.Service{fuel}, Required: true}, []float64{1, 0, 0}},
		{planner.Stop{}, []float64{1, 0, 0}},
	}
	for i := range stops {
		stops[i].ID = string(rune('a' + i))
		p.Stops = append(p.Stops, stops[i].Stop)
	}
	m := model.New(p)
	for i := range stops {
		if got := firstWeights(m, &m.Stops[i], []int{2}, []int{0, 1}); !slices.Equal(got, stops[i].want) {
			t.Errorf("stop %d: %v, want %v", i, got, stops[i].want)
		}
	}
}
