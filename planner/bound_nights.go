package planner

import (
	"math"
	"slices"
)

// This file solves nights, and the tanks that only nights use, together and
// backwards. Left out are detours in the day's kilometres, minutes at stops,
// windows and the other tanks; headroom is rounded up to a few classes. So the
// result is never too much.
//
// What remains is a small table after each stop: by the next night reached
// (or the end), nights so far and classes of headroom, the least cost to go.
// Rows ascend by how far the day must reach, and each holds the best of the
// rows before it, so that a look-up is one binary search. In memory the rows lie
// side by side, class by class: what is done to a class is done to all rows.

type nightsBound struct {
	m      *model
	tanks  []int
	worth  []float64 // by tank of the problem
	scales []scale   // by tank of tanks
	moving []int     // scales that move with the road
	stride []int     // by tank of tanks
	priced int       // of tanks: the one whose layers are weighed, −1 if none
	wage   float64   // what a night more is worth, if nights are not counted
	counts int       // nights so far are told apart below this number; 1: not at all
	enough bool      // the last of them stands for any more as well
	coarse bool      // the classes are fewer than they should be
	size   int       // classes in all
	after  []*nightTable

	via, own, old []float64             // scratch
	store         *store[float64]       // what the tables lie in
	room          func(n int) []float64 // for the next table
}

// A tally is how the bound takes the wished number of nights into account:
// counted in the table, or left out and a night given a wage.
type tally struct {
	counted bool
	wage    float64
}

// Up to easilyCounted nights are counted; more get a wage, up to mostCounted
// are counted as well, and up to everCounted in finer bounds.
const easilyCounted, mostCounted, everCounted = 4, 8, 21

type nightTable struct {
	reach   []float64 // km along the route, half detour included
	reachAt []float64 // minutes likewise; the least of this and all later rows
	rowAt   []float64 // minutes likewise, of this row
	cost    []float64 // class by class, in each all rows

	packing *packing // nil: not packed
	starts  []int32
	runs    []run
}

// due is the wage of the nights that are still wanted, or, if it is negative,
// of those still allowed: cost ≥ … + wage·(least − nights) for a wage from 0 on,
// and likewise with most for one below.
func (b *nightsBound) due(nights int) float64 {
	switch {
	case b.wage > 0:
		return b.wage * float64(b.m.least-nights)
	case b.wage < 0:
		return b.wage * float64(b.m.most-nights)
	}
	return 0
}

// bindingTanks are the tanks that nights use, that driving does not use but may
// restore, and that can run out.
func (m *model) bindingTanks() []int {
	var out []int
	for t := range m.tanks {
		x := &m.tanks[t]
		if x.perKm > 0 || x.perKm < 0 && !x.free { // of the latter, what is in hand is not yet decided
			continue
		}
		use := 0.0 // a night
		for i := range m.stops {
			if s := &m.stops[i]; s.night {
				use = max(use, s.use[t]/float64(s.nights))
			}
		}
		if use > 0 && x.start-float64(min(m.leastNights()+2, m.most))*use < x.end {
			out = append(out, t)
		}
	}
	return out
}

func newNightsBound(m *model, r recipe, shares []float64, store *store[float64]) *nightsBound {
	b := &nightsBound{store: store, m: m, tanks: r.tanks, worth: r.worth, wage: r.nights.wage, after: make([]*nightTable, len(m.stops)+1)}
	b.counts = 1
	switch {
	case !r.nights.counted:
	case m.most <= everCounted:
		b.counts = m.most + 1
	default: // whether they are too many is left out
		b.counts, b.enough = m.least+1, true
	}
	b.classify(r.detail)
	b.size = 1
	for k := range b.tanks {
		b.stride = append(b.stride, b.size)
		b.size *= b.scales[k].n
		if b.scales[k].step > 0 {
			b.moving = append(b.moving, k)
		}
	}
	b.size *= b.counts
	b.priced = slices.IndexFunc(b.tanks, func(t int) bool { return !m.tanks[t].free })
	pack := b.packs(r.detail)
	b.room = store.take
	if pack != nil {
		b.room = pack.room
	}
	b.after[len(m.stops)] = b.end()
	for i := len(m.stops) - 1; i >= 0; i-- {
		if r.stopped != nil && r.stopped() {
			return nil
		}
		b.after[i] = b.before(i, shares[i])
		if pack != nil && b.after[i] != b.after[i+1] {
			pack.pack(b.after[i+1])
		}
	}
	if pack != nil {
		pack.pack(b.after[0])
	}
	return b
}

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
