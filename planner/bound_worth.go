package planner

import (
	"math"
	"slices"
)

// This file seeks multipliers with which bounds are tight: what a unit of a
// tank is worth, and what a night is.

// bestWorth gives those of these tanks that have no worth their price if that
// makes bounds of this tank and the nights alone tighter.
func (m *model) bestWorth(tanks []int, nights tally) []float64 {
	best := m.worths()
	for _, t := range tanks {
		price := m.payable(t)
		if best[t] != 0 || price == 0 {
			continue
		}
		worth := slices.Clone(best)
		worth[t] = price
		alone := []int{t}
		without := newSweep(m, newBounds(m, recipe{worth: best, tanks: alone, nights: nights, detail: rough})).root()
		if newSweep(m, newBounds(m, recipe{worth: worth, tanks: alone, nights: nights, detail: rough})).root() > without {
			best = worth
		}
	}
	return best
}

// bestWage is the wage of a night with which a sketch of bounds is tightest:
// tanks that are paid for make no difference to it.
// They are concave in it.
func (m *model) bestWage(stopped func() bool) float64 {
	tanks := m.bindingTanks()
	worth := m.payableWorths(tanks)
	tanks = slices.DeleteFunc(tanks, func(t int) bool { return !m.tanks[t].free })
	r := recipe{worth: worth, tanks: tanks, detail: sketch}
	b := newBounds(m, r)
	w := newSweep(m, b)
	value := func(wage float64) float64 {
		b.nights.store.reset()
		r.nights.wage = wage
		b.nights = newNightsBound(m, r, b.shares, b.nights.store)
		return w.root()
	}
	best, most := 0.0, w.root()
	step := (1 + math.Abs(most)) / float64(20*m.least)
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

// payable is the cheapest price of a tank that may have to be bought for, else 0.
func (m *model) payable(t int) float64 {
	if m.tanks[t].free || m.restores(t) {
		return 0
	}
	return m.cheapestPrice(t)
}

// payableWorths are the worths with the price of each of these tanks that may
// have to be bought for.
func (m *model) payableWorths(tanks []int) []float64 {
	worth := m.worths()
	for _, t := range tanks {
		worth[t] = m.payable(t)
	}
	return worth
}
