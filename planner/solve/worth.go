package solve

import (
	"math"
	"slices"

	"ullage/planner/internal/bound"
	"ullage/planner/internal/model"
)

// This file seeks multipliers with which bounds are tight: what a unit of a
// tank is worth, and what a night is.

// bestWorth gives those of these tanks that have no worth their price if that
// makes bounds of this tank and the nights alone tighter.
func bestWorth(m *model.Model, tanks []int, nights bound.Tally, stopped func() bool) []float64 {
	best := bound.Worths(m)
	for _, t := range tanks {
		price := bound.Payable(m, t)
		if best[t] != 0 || price == 0 {
			continue
		}
		worth := slices.Clone(best)
		worth[t] = price
		alone := []int{t}
		without := bound.New(m, bound.Recipe{Worth: best, Tanks: alone, Nights: nights, Detail: bound.Rough, Stopped: stopped})
		with := bound.New(m, bound.Recipe{Worth: worth, Tanks: alone, Nights: nights, Detail: bound.Rough, Stopped: stopped})
		if without == nil || with == nil {
			return best
		}
		if newSweep(m, with).root() > newSweep(m, without).root() {
			best = worth
		}
	}
	return best
}

// bestWage is the wage of a night with which a sketch of bounds is tightest:
// tanks that are paid for make no difference to it.
// They are concave in it.
func bestWage(m *model.Model, stopped func() bool) float64 {
	tanks := bound.BindingTanks(m)
	worth := bound.PayableWorths(m, tanks)
	tanks = slices.DeleteFunc(tanks, func(t int) bool { return !m.Tanks[t].Free })
	r := bound.Recipe{Worth: worth, Tanks: tanks, Detail: bound.Sketch, Stopped: stopped}
	b := bound.New(m, r)
	if b == nil {
		return 0
	}
	w := newSweep(m, b)
	value := func(wage float64) float64 {
		r.Nights.Wage = wage
		if !b.Retally(r) {
			return math.Inf(-1)
		}
		return w.root()
	}
	best, most := 0.0, w.root()
	step := (1 + math.Abs(most)) / float64(20*m.Least)
	if value(step) <= most {
		step = -step
	}
	for range 12 { // outwards; beyond, no plan can have enough nights, or few enough
		v := value(best + step)
		if !(v > most) || stopped() {
			break
		}
		best, most = best+step, v
		step *= 2
	}
	for range 4 { // inwards
		step /= 2
		if v := value(best + step); v > most {
			best, most = best+step, v
		} else if v := value(best - step); v > most {
			best, most = best-step, v
		}
	}
	return best
}
