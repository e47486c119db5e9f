package planner

import (
	"math"
	"slices"
)

// This file works out the tables by nights, from the last stop to the first.

// end is the table after the last stop: one row, that reaches the end.
func (b *nightsBound) end() *nightTable {
	m := b.m
	t := &nightTable{reach: []float64{m.length}, rowAt: []float64{m.endMin}, reachAt: []float64{m.endMin}, cost: b.room(b.size)}
	clear(t.cost)
	levels := b.size / b.counts
	for at := range t.cost {
		if n := at / levels; b.counts > 1 && n < m.least {
			t.cost[at] = math.Inf(1)
			continue
		}
		for k, tank := range b.tanks {
			x := &m.tanks[tank]
			short := x.end - b.scales[k].headroom(len(m.stops), at/b.stride[k]%b.scales[k].n, m.length)
			if short <= slack {
				continue
			}
			if x.refill < 0 {
				t.cost[at] = math.Inf(1)
			} else {
				t.cost[at] += short * (x.refill - b.worth[tank])
			}
		}
	}
	return t
}

// before is the table before stop i, given the one after it.
func (b *nightsBound) before(i int, visit float64) *nightTable {
	s, after := &b.m.stops[i], b.after[i+1]
	moved, known := b.moves(i), b.knows(i)
	if !known && !moved {
		return after
	}
	prev := 0.0
	if i > 0 {
		prev = b.m.stops[i-1].km
	}
	// Rows that a fresh morning at the stop before cannot reach are of no more use.
	rows := 0
	for rows < len(after.reach) && after.reach[rows] <= prev+b.m.maxKm+slack {
		rows++
	}
	own := -1 // the row of the night at this stop
	switch {
	case s.required && s.night:
		own, rows = 0, 0
	case s.night:
		for own = 0; own < rows && after.reach[own] < s.km+s.half; own++ {
		}
	}
	reach, at := s.km+s.half, s.at+s.halfMin+s.stopMin
	t := &nightTable{reach: after.reach[:rows], rowAt: after.rowAt[:rows]}
	joins := own >= 0 && own < rows && t.reach[own] == reach && t.rowAt[own] == at // another stay at the same place
	if own >= 0 && !joins {
		t.reach = slices.Insert(slices.Clip(t.reach), own, reach)
		t.rowAt = slices.Insert(slices.Clip(t.rowAt), own, at)
	}
	n := len(t.reach)
	t.cost = b.room(n * b.size)
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
			t.cost[c*n+own] = lesser(t.cost[c*n+own], x)
		}
	}
	if moved {
		b.move(t.cost, n, i)
	}
	t.settle()
	return t
}

// settle gives every row the best of those before it.
func (t *nightTable) settle() {
	n := len(t.reach)
	for from := 0; from < len(t.cost); from += n {
		row := t.cost[from : from+n]
		for r := 1; r < n; r++ {
			row[r] = lesser(row[r], row[r-1])
		}
	}
	t.reachAt = slices.Clone(t.rowAt)
	for r := n - 2; r >= 0; r-- {
		t.reachAt[r] = lesser(t.reachAt[r], t.reachAt[r+1])
	}
}

// knows says whether the stop is any of this bound's business.
func (b *nightsBound) knows(i int) bool {
	s := &b.m.stops[i]
	known := s.night || s.required
	for _, tank := range b.tanks {
		known = known || s.service(tank) != nil
	}
	return known
}

// day lowers the costs, rows in each class, to what they become where stop i may be visited by day.
func (b *nightsBound) day(cost []float64, rows, i int, visit float64) {
	s := &b.m.stops[i]
	via := scratch(&b.via, len(cost))
	copy(via, cost)
	for k, tank := range b.tanks {
		if y := s.service(tank); y != nil && !y.guests {
			b.fill(via, rows, k, y)
		}
	}
	for _, k := range b.moving { // the detour restores, too
		d := int(math.Ceil(-b.m.tanks[b.tanks[k]].perKm*2*s.half/b.scales[k].step - slack))
		b.up(via, rows, k, d)
	}
	for at := range via {
		via[at] += visit
	}
	if s.required {
		copy(cost, via)
	} else {
		lowest(cost, via)
	}
}

// night is the cost to go from just before a night at stop i, by the classes after it.
func (b *nightsBound) night(i int, after *nightTable, visit float64) []float64 {
	m := b.m
	s := &m.stops[i]
	row, old := scratch(&b.own, b.size), scratch(&b.old, b.size)
	r := after.find(s.km+m.maxKm-s.half, s.at+m.maxMin-s.halfMin)
	levels := b.size / b.counts
	for count := range b.counts {
		n := count + s.nights
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
	cost := visit + s.nightFee - b.wage*float64(s.nights)
	for t, u := range s.use {
		cost += b.worth[t] * u
	}
	for k, tank := range b.tanks {
		x := &m.tanks[tank]
		y, u := s.service(tank), s.use[tank]
		if y == nil && u == 0 && x.perKm == 0 {
			continue
		}
		n := b.scales[k].n
		next := make([]int, n) // class after the night, −1: not possible
		lefts := make([]float64, n)
		for c := range next {
			left := lesser(x.cap, lesser(x.cap, b.scales[k].headroom(i+1, c, s.km)-x.perKm*s.half)-u)
			lefts[c] = left
			next[c] = -1
			if left >= x.reserve-slack {
				next[c] = b.scales[k].class(i+1, left-x.perKm*s.half-b.scales[k].offset(i+1, s.km))
			}
		}
		premium := 0.0
		if y != nil {
			premium = b.premium(y)
		}
		copy(old, row)
		for at := range row {
			row[at] = math.Inf(1)
		}
		for c := range n {
			if next[c] >= 0 {
				b.lower(row, old, 1, k, c, next[c], 0)
			}
			if y != nil && premium == 0 {
				b.lower(row, old, 1, k, c, n-1, y.fixed)
			} else if y != nil {
				for to := max(next[c], 0); to < n; to++ {
					b.lower(row, old, 1, k, c, to, y.fixed+premium*b.scales[k].from(lefts[c], to))
				}
			}
		}
	}
	for at := range row {
		row[at] += cost
	}
	return row
}
