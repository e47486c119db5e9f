package bound

import (
	"math"
	"slices"

	"ullage/planner/internal/model"
)

// This file works out the tables by nights, from the last stop to the first.

// end is the table after the last stop: one row, that reaches the end.
func (b *Nights) end() *nightTable {
	m := b.m
	t := &nightTable{reach: []float64{m.Length}, rowAt: []float64{m.EndMin}, reachAt: []float64{m.EndMin}, cost: b.room(b.size)}
	clear(t.cost)
	levels := b.size / b.counts
	for at := range t.cost {
		if n := at / levels; b.counts > 1 && n < m.Least {
			t.cost[at] = math.Inf(1)
			continue
		}
		for k, tank := range b.Tanks {
			x := &m.Tanks[tank]
			short := x.End - b.scales[k].headroom(len(m.Stops), at/b.stride[k]%b.scales[k].n, m.Length)
			if short <= model.Slack {
				continue
			}
			if x.Refill < 0 {
				t.cost[at] = math.Inf(1)
			} else {
				t.cost[at] += short * (x.Refill - b.worth[tank])
			}
		}
	}
	return t
}

// before is the table before stop i, given the one after it.
func (b *Nights) before(i int, visit float64) *nightTable {
	s, after := &b.m.Stops[i], b.after[i+1]
	moved, known := b.moves(i), b.knows(i)
	if !known && !moved {
		return after
	}
	after = b.eachRow(after)
	rows, own := b.rows(i, after)
	reach, at := s.Km+s.Half, s.At+s.HalfMin+s.StopMin
	t := &nightTable{reach: after.reach[:rows], rowAt: after.rowAt[:rows]}
	joins := own >= 0 && own < rows && t.reach[own] == reach && t.rowAt[own] == at // another stay at the same place
	if own >= 0 && !joins {
		t.reach = slices.Insert(slices.Clip(t.reach), own, reach)
		t.rowAt = slices.Insert(slices.Clip(t.rowAt), own, at)
	}
	n := len(t.reach)
	t.cost = b.costs(n)
	for c := range b.size {
		to, from := t.cost[c*n:(c+1)*n], after.cost[c*len(after.reach):]
		if n == rows {
			copy(to, from)
			continue
		}
		copy(to[:own], from)
		to[own] = math.Inf(1)
		copy(to[own+1:], from[own:])
	}
	if known {
		b.day(t.cost, n, i, visit)
	}
	if own >= 0 {
		for c, x := range b.night(i, after, visit) {
			t.cost[c*n+own] = model.Lesser(t.cost[c*n+own], x)
		}
	}
	if moved {
		b.move(t.cost, n, i)
	}
	t = b.keepRaw(t)
	t.best()
	b.narrow(t, b.rowed)
	t.settle()
	return t
}

// costs are what a table of so many rows is worked out in.
func (b *Nights) costs(rows int) []float64 {
	switch {
	case b.apart():
		b.raws[0], b.raws[1] = b.raws[1], b.raws[0]
		return scratch(&b.raws[0], rows*b.size)
	case rows > b.rowed:
		return scratch(&b.wide, rows*b.size)
	}
	return b.room(rows * b.size)
}

// rows of the table after stop i that are of use before it, and which is to be
// that of the night at the stop; −1 without a night.
func (b *Nights) rows(i int, after *nightTable) (rows, own int) {
	s := &b.m.Stops[i]
	if s.Required && s.Night {
		return 0, 0
	}
	prev := 0.0
	if i > 0 {
		prev = b.m.Stops[i-1].Km
	}
	// Rows that a fresh morning at the stop before cannot reach are of no more use.
	for rows < len(after.reach) && after.reach[rows] <= prev+b.m.MaxKm+model.Slack {
		rows++
	}
	if !s.Night {
		return rows, -1
	}
	for own < rows && after.reach[own] < s.Km+s.Half {
		own++
	}
	return rows, own
}

// day lowers the costs, rows in each class, to what they become where stop i may be visited by day.
func (b *Nights) day(cost []float64, rows, i int, visit float64) {
	s := &b.m.Stops[i]
	via := scratch(&b.via, len(cost))
	copy(via, cost)
	for k, tank := range b.Tanks {
		if y := s.Service(tank); y != nil && !y.Guests {
			b.fill(via, rows, k, y)
		}
	}
	for _, k := range b.moving { // the detour restores, too
		d := int(math.Ceil(-b.m.Tanks[b.Tanks[k]].PerKm*2*s.Half/b.scales[k].step - model.Slack))
		b.up(via, rows, k, d)
	}
	for at := range via {
		via[at] += visit
	}
	if s.Required {
		copy(cost, via)
	} else {
		lowest(cost, via)
	}
}

// night is the cost to go from just before a night at stop i, by the classes after it.
func (b *Nights) night(i int, after *nightTable, visit float64) []float64 {
	s := &b.m.Stops[i]
	row := b.morning(i, after)
	cost := visit + s.NightFee - b.wage*float64(s.Nights)
	for t, u := range s.Use {
		cost += b.worth[t] * u
	}
	for k, tank := range b.Tanks {
		if y, u := s.Service(tank), s.Use[tank]; y != nil || u != 0 || b.m.Tanks[tank].PerKm != 0 {
			b.overnight(row, i, k, y)
		}
	}
	for at := range row {
		row[at] += cost
	}
	return row
}

// morning is the cost to go from the next morning at stop i, by the nights before it.
func (b *Nights) morning(i int, after *nightTable) []float64 {
	s := &b.m.Stops[i]
	row := scratch(&b.own, b.size)
	r := after.find(s.Km+b.m.MaxKm-s.Half, s.At+b.m.MaxMin-s.HalfMin)
	if b.apart() {
		after, r = b.dawn(i, after, r), 0
		b.dawns[i] = after
	}
	levels := b.size / b.counts
	for count := range b.counts {
		n := count + s.Nights
		if b.enough || b.counts == 1 {
			n = min(n, b.counts-1)
		}
		at := row[count*levels : (count+1)*levels]
		if r >= 0 && n < b.counts {
			for k := range at {
				at[k] = after.cost[(n*levels+k)*len(after.reach)+r]
			}
			continue
		}
		for k := range at {
			at[k] = math.Inf(1)
		}
	}
	return row
}

// overnight turns costs by classes of tank k after the night at stop i into costs by
// classes before it, with the service y there if it is not nil.
func (b *Nights) overnight(row []float64, i, k int, y *model.Service) {
	s, x, scale := &b.m.Stops[i], &b.m.Tanks[b.Tanks[k]], &b.scales[k]
	old := scratch(&b.old, b.size)
	copy(old, row)
	for at := range row {
		row[at] = math.Inf(1)
	}
	premium := 0.0
	if y != nil {
		premium = b.premium(y)
	}
	for c := range scale.n {
		left := model.Lesser(x.Cap, model.Lesser(x.Cap, scale.headroom(i+1, c, s.Km)-x.PerKm*s.Half)-s.Use[b.Tanks[k]])
		next := -1 // class after the night; −1: not possible
		if left >= x.Reserve-model.Slack {
			next = scale.class(i+1, left-x.PerKm*s.Half-scale.offset(i+1, s.Km))
			b.lower(row, old, 1, k, c, next, 0)
		}
		switch {
		case y == nil:
		case premium == 0:
			b.lower(row, old, 1, k, c, scale.n-1, y.Fixed)
		default:
			for to := max(next, 0); to < scale.n; to++ {
				b.lower(row, old, 1, k, c, to, y.Fixed+premium*scale.from(left, to))
			}
		}
	}
}

// packs says how tables with these scales are packed; nil if not.
func (b *Nights) packs(d Detail) *packing {
	if d.Moving == 0 || len(b.moving) == 0 {
		return nil
	}
	k := b.moving[0]
	return &packing{stride: b.stride[k], n: b.scales[k].n}
}

func newNights(m *model.Model, r Recipe, shares []float64, store *store[float64]) *Nights {
	b := &Nights{store: store, m: m, Tanks: r.Tanks, worth: r.Worth, wage: r.Nights.Wage, after: make([]*nightTable, len(m.Stops)+1)}
	b.counts = 1
	switch {
	case !r.Nights.Counted:
	case m.Most <= EverCounted:
		b.counts = m.Most + 1
	default: // whether they are too many is left out
		b.counts, b.enough = m.Least+1, true
	}
	b.classify(r.Detail)
	b.size = 1
	for k := range b.Tanks {
		b.stride = append(b.stride, b.size)
		b.size *= b.scales[k].n
		if b.scales[k].step > 0 {
			b.moving = append(b.moving, k)
		}
	}
	b.size *= b.counts
	if b.rowed = math.MaxInt; r.Detail.Moving == 0 { // packed tables are small
		b.rowed = mostRows(m, b.size)
	}
	b.priced = slices.IndexFunc(b.Tanks, func(t int) bool { return !m.Tanks[t].Free })
	pack := b.packs(r.Detail)
	b.room = store.take
	if pack != nil {
		b.room = pack.room
	}
	b.after[len(m.Stops)] = b.end()
	b.raw, b.dawns = b.after[len(m.Stops)], make([]*nightTable, len(m.Stops))
	for i := len(m.Stops) - 1; i >= 0; i-- {
		if r.Stopped() {
			return nil
		}
		b.after[i] = b.before(i, shares[i])
		pack.done(b.dawns[i])
		if b.after[i] != b.after[i+1] {
			pack.done(b.after[i+1])
		}
	}
	pack.done(b.after[0])
	b.raw, b.raws = nil, [2][]float64{}
	return b
}
