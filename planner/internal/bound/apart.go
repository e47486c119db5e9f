package bound

import (
	"math"
	"slices"

	"ullage/planner/internal/model"
)

// This file is for problems in which two nights in a row lie so far apart. After a
// night the next ones are those of a window of rows, so the best of all rows before
// is not enough: rows are worked out each by itself, and for the morning after a
// night the best of its window is kept, a table of one row. A partial plan that is
// on its way is looked up as if nights were near; but its bound never falls below that of
// the morning.

// apart says whether nights lie apart.
func (b *Nights) apart() bool { return b.m.MoveKm > 0 }

// eachRow is the table after a stop with each row by itself.
func (b *Nights) eachRow(after *nightTable) *nightTable {
	if b.apart() {
		return b.raw
	}
	return after
}

// keepRaw keeps a table as it is for the next step where nights lie apart, and gives
// a copy to store. Where there are more rows than are kept, those that are kept will do.
func (b *Nights) keepRaw(t *nightTable) *nightTable {
	if !b.apart() {
		return t
	}
	n := len(t.reach)
	t.settle()
	stored := &nightTable{reach: t.reach, rowAt: t.rowAt}
	if b.raw = t; n <= b.rowed {
		stored.cost = b.room(n * b.size)
		copy(stored.cost, t.cost)
		return stored
	}
	stored.cost = scratch(&b.wide, n*b.size)
	copy(stored.cost, t.cost)
	stored.best()
	b.narrow(stored, b.rowed)
	stored.settle()
	b.raw = &nightTable{reach: stored.reach, rowAt: stored.rowAt, reachAt: stored.reachAt, cost: t.cost[:len(stored.cost)]}
	copy(b.raw.cost, stored.cost)
	return stored
}

// dawn is the least cost to go from the morning after a night at stop i, by class: by
// the rows up to the last that are far enough on, or end the route.
func (b *Nights) dawn(i int, after *nightTable, last int) *nightTable {
	s, n := &b.m.Stops[i], len(after.reach)
	from, at := s.Km+b.m.MoveKm-model.Slack, s.At+b.m.MaxMin-s.HalfMin+model.Slack
	var rows []int
	for r := 0; r <= last; r++ {
		far := r+1 == n || after.reach[r+1] > from // rows that were merged reach as far as the nearest of them
		if (after.reach[r] >= from || far && n >= b.rowed || after.reach[r] == b.m.Length) && after.rowAt[r] <= at {
			rows = append(rows, r)
		}
	}
	out := b.dawns[i]
	if out == nil {
		out = &nightTable{reach: []float64{0}, reachAt: []float64{0}, rowAt: []float64{0}, cost: b.dawnRoom()}
	}
	for c := range b.size {
		best := math.Inf(1)
		for _, r := range rows {
			best = model.Lesser(best, after.cost[c*n+r])
		}
		out.cost[c] = best
	}
	return out
}

// dawnRoom is for a table of one row. Packed tables are read from it, and it is free again.
func (b *Nights) dawnRoom() []float64 { return slices.Grow([]float64(nil), b.size)[:b.size] }

// next is the table in which a plan goes on from the morning after a night at stop i, and
// the row of it; −1: it cannot.
func (b *Nights) next(i int) (*nightTable, int) {
	s := &b.m.Stops[i]
	row := b.after[i+1].find(s.Km+b.m.MaxKm-s.Half, s.At+b.m.MaxMin-s.HalfMin)
	if row >= 0 && b.apart() && b.dawns[i] != nil {
		return b.dawns[i], 0
	}
	return b.after[i+1], row
}

// Dawn is the cost to go from the morning after a night at stop i, as [Nights.Cost] is.
func (b *Nights) Dawn(i int, l *Place, hand []float64, layers []model.Layer) float64 {
	if !b.apart() || b.dawns[i] == nil {
		return b.Cost(i+1, l, hand, layers)
	}
	class := b.class(i+1, l, hand)
	if len(layers) == 0 {
		return b.dawns[i].at(class, 0)
	}
	return b.withLayers(b.dawns[i], class, 0, hand[b.Tanks[b.priced]], layers)
}
