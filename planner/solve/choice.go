package solve

import (
	"math"
	"slices"

	"ullage/planner/internal/bound"
	"ullage/planner/internal/model"
)

// This file chooses the bounds, from cheap to fine, as far as a proof needs.

// A finder finds ever tighter bounds of one problem.
type finder struct {
	m    *model.Model
	best *bound.Bounds // the tightest so far
	root float64       // its value for the whole trip

	guide  *bound.Bounds // the tightest that see all tanks: a plan found with others may fail for a tank left out
	guides float64       // its value

	nights  []bound.Tally // ways to see to the number of nights, the cheaper first
	later   bound.Tally   // the way for finer bounds
	stopped func() bool
	stage   int
}

// newFinder returns one that has found nothing yet. When stopped says so, it
// looks no further than it must to have some bounds.
func newFinder(m *model.Model, stopped func() bool) *finder {
	f := &finder{m: m, root: math.Inf(-1), stopped: stopped}
	wanted := min(m.Most, m.Least)
	if wanted > bound.EasilyCounted || !bound.Counts(m, wanted) {
		f.nights = append(f.nights, bound.Tally{Wage: bestWage(m, stopped)})
	}
	if wanted <= bound.MostCounted && bound.Counts(m, wanted) {
		f.nights = append(f.nights, bound.Tally{Counted: true})
	}
	if f.later = f.nights[0]; wanted <= bound.EverCounted && bound.Counts(m, wanted) {
		f.later = bound.Tally{Counted: true}
	}
	return f
}

// next looks for tighter bounds than before, and says whether there may be
// tighter ones still:
//
//   - first those with all tanks that nights use in one group;
//   - then with very many classes of a tank that driving restores;
//   - if the tanks are too many to be told apart finely, a part of them is
//     better: those that do not bind cost nothing to leave out. They are taken
//     in one by one, each time the one that gives most;
//   - then the same with finer classes, going on from the group found.
//
// Without any bounds, best is nil: it was stopped before.
func (f *finder) next() (more bool) {
	f.stage++
	switch f.stage {
	case 1:
		f.first()
	case 2:
		f.sharpen()
	case 3:
		f.grow(nil, bound.Fine)
	case 4:
		f.grow(f.best.Nights.Tanks, bound.Finest)
	}
	return f.best != nil && f.best.Nights.Coarse && f.stage < 4
}

func (f *finder) first() {
	for _, nights := range f.nights {
		tanks := bound.BindingTanks(f.m)
		f.try(bestWorth(f.m, tanks, nights, f.stopped), nights, tanks, bound.Rough)
	}
}

// sharpen tells very many classes of a tank that driving restores; the more
// other tanks, the fewer classes each: so those that are paid for are left out, too.
func (f *finder) sharpen() {
	tanks := bound.BindingTanks(f.m)
	if !bound.Packs(f.m) || !slices.ContainsFunc(tanks, func(t int) bool { return f.m.Tanks[t].PerKm < 0 }) {
		return
	}
	worth := f.betterWorth(f.later, tanks, bound.Fine)
	f.try(worth, f.later, tanks, bound.Sharp)
	if free := slices.DeleteFunc(slices.Clone(tanks), func(t int) bool { return !f.m.Tanks[t].Free }); len(free) < len(tanks) {
		f.try(worth, f.later, free, bound.Sharp)
	}
}

// pay tries a worth for each tank of the group that has none.
func (f *finder) pay(nights bound.Tally, d bound.Detail) {
	m, from := f.m, f.best
	for _, t := range from.Nights.Tanks {
		if price := bound.Payable(m, t); from.Worth[t] == 0 && price > 0 {
			worth := slices.Clone(from.Worth)
			worth[t] = price
			f.try(worth, nights, from.Nights.Tanks, d)
		}
	}
}

// grow takes tanks into the group one by one, and tries each group.
func (f *finder) grow(group []int, d bound.Detail) {
	all, from := bound.BindingTanks(f.m), f.best
	worth, nights := from.Worth, f.later
	if len(group) == 0 {
		worth = f.betterWorth(nights, all, d)
	}
	if len(group) == len(all) {
		for k := range group {
			f.try(worth, nights, slices.Delete(slices.Clone(group), k, k+1), d)
		}
	}
	if len(group) > 0 {
		f.try(worth, nights, group, d)
	}
	before := math.Inf(-1)
	for len(group) < len(all) && !math.IsInf(f.root, 1) {
		most, add := math.Inf(-1), -1
		for _, t := range all {
			if !slices.Contains(group, t) {
				if r := f.try(worth, nights, append(slices.Clone(group), t), d); r > most {
					most, add = r, t
				}
			}
		}
		if most < before {
			break // too coarse by now
		}
		group, before = append(slices.Clone(group), add), most
	}
	if f.best != from {
		f.pay(nights, d)
	}
}

// betterWorth is the worth with which single tanks give more: that of the
// chosen bounds, or that of tanks that must be bought for alone.
func (f *finder) betterWorth(nights bound.Tally, all []int, d bound.Detail) []float64 {
	best, most := f.best.Worth, math.Inf(-1)
	if slices.Equal(best, bound.Worths(f.m)) {
		return best
	}
	for _, worth := range [][]float64{best, bound.Worths(f.m)} {
		for _, t := range all {
			if r := f.try(worth, nights, []int{t}, d); r > most {
				best, most = worth, r
			}
		}
	}
	return best
}

// try keeps these bounds if they are the tightest, and gives their value.
func (f *finder) try(worth []float64, nights bound.Tally, tanks []int, d bound.Detail) float64 {
	b := bound.New(f.m, bound.Recipe{Worth: worth, Tanks: tanks, Nights: nights, Detail: d, Stopped: f.stopped})
	if b == nil {
		return math.Inf(-1)
	}
	r := newSweep(f.m, b).root()
	if f.best == nil || r > f.root {
		f.best, f.root = b, r
	}
	if len(tanks) == len(bound.BindingTanks(f.m)) && (f.guide == nil || r >= f.guides) {
		f.guide, f.guides = b, r
	}
	return r
}
