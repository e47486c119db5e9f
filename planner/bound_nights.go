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
// rows before it, so that a look-up is one binary search.

type nightsBound struct {
	m       *model
	tanks   []int
	worth   []float64   // by tank of the problem
	classes [][]float64 // by tank of tanks: headrooms, ascending
	stride  []int       // by tank of tanks
	counts  int         // nights so far are told apart below this number; 1: not at all
	size    int         // of a row
	after   []*nightTable
}

type nightTable struct {
	reach   []float64 // km along the route, half detour included
	reachAt []float64 // minutes likewise; the least of this and all later rows
	rowAt   []float64 // minutes likewise, of this row
	cost    []float64 // row by row
}

// bindingTanks are the tanks that only nights use and that can run out.
func (m *model) bindingTanks() []int {
	var out []int
	for t := range m.tanks {
		x := &m.tanks[t]
		if x.perKm != 0 {
			continue
		}
		use := 0.0
		for i := range m.stops {
			if m.stops[i].night {
				use = max(use, m.stops[i].use[t])
			}
		}
		if use > 0 && x.start-float64(m.leastNights()+2)*use < x.end {
			out = append(out, t)
		}
	}
	return out
}

func newNightsBound(m *model, tanks []int, worth []float64, share func(stop int) float64) *nightsBound {
	b := &nightsBound{m: m, tanks: tanks, worth: worth, after: make([]*nightTable, len(m.stops)+1)}
	b.classify(400)
	b.size = 1
	for k := range tanks {
		b.stride = append(b.stride, b.size)
		b.size *= len(b.classes[k])
	}
	b.counts = 1
	if m.ranged && m.most <= 60 && b.size*(m.most+1) <= 4000 {
		b.counts = m.most + 1
	}
	b.size *= b.counts
	b.after[len(m.stops)] = b.end()
	for i := len(m.stops) - 1; i >= 0; i-- {
		b.after[i] = b.before(i, share(i)*m.visitCost(&m.stops[i], worth))
	}
	return b
}

// classify chooses the headrooms to tell apart: what is left of a full tank,
// or of the start, after some nights; fewer if that makes more than limit.
func (b *nightsBound) classify(limit int) {
	most := make([]int, len(b.tanks))
	for k := range most {
		most[k] = 10
	}
	for {
		b.classes = b.classes[:0]
		size := 1
		for k, t := range b.tanks {
			b.classes = append(b.classes, b.reachable(t, most[k]))
			size *= len(b.classes[k])
		}
		if size <= limit {
			return
		}
		k := 0
		for j := range b.classes {
			if len(b.classes[j]) > len(b.classes[k]) {
				k = j
			}
		}
		most[k] = len(b.classes[k]) - 1
	}
}

func (b *nightsBound) reachable(t, most int) []float64 {
	x := &b.m.tanks[t]
	var uses []float64
	for i := range b.m.stops {
		if s := &b.m.stops[i]; s.night && s.use[t] != 0 && !slices.Contains(uses, s.use[t]) {
			uses = append(uses, s.use[t])
		}
	}
	slices.SortFunc(uses, func(a, b float64) int { // the largest first
		if a > b {
			return -1
		}
		return 1
	})
	found := []float64{x.cap}
	add := func(v float64) {
		if v > x.cap {
			return
		}
		for _, w := range found {
			if math.Abs(v-w) < 1e-6 {
				return
			}
		}
		if v >= x.reserve-slack && len(found) < most {
			found = append(found, v)
		}
	}
	if len(uses) > 0 && uses[0] > 0 {
		for v := x.cap - uses[0]; v >= x.reserve-slack && len(found) < most; v -= uses[0] {
			add(v)
		}
	}
	add(x.start)
	for n := 0; n < len(found); n++ {
		for _, u := range uses {
			add(found[n] - u)
		}
	}
	slices.Sort(found)
	return found
}

// class is the lowest class that is not below the headroom.
func (b *nightsBound) class(k int, headroom float64) int {
	c := b.classes[k]
	n := 0
	for n < len(c)-1 && c[n] < headroom-slack {
		n++
	}
	return n
}

// index is the place in a row; −1 where no cost to go applies.
func (b *nightsBound) index(s *state) int {
	at := 0
	for k, t := range b.tanks {
		at += b.stride[k] * b.class(k, s.hand[t]+s.unpaid(t))
	}
	if b.counts > 1 {
		at += min(s.nights, b.counts-1) * (b.size / b.counts)
	}
	return at
}

// end is the table after the last stop: one row, that reaches the end.
func (b *nightsBound) end() *nightTable {
	m := b.m
	t := &nightTable{reach: []float64{m.length}, rowAt: []float64{m.endMin}, reachAt: []float64{m.endMin}, cost: make([]float64, b.size)}
	levels := b.size / b.counts
	for at := range t.cost {
		if n := at / levels; b.counts > 1 && n < m.least {
			t.cost[at] = math.Inf(1)
			continue
		}
		for k, tank := range b.tanks {
			x := &m.tanks[tank]
			short := x.end - b.classes[k][at/b.stride[k]%len(b.classes[k])]
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
	served := false
	for _, tank := range b.tanks {
		y := s.service(tank)
		served = served || y != nil && !y.guests
	}
	if !s.night && !served && !s.required {
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
	t := &nightTable{}
	own := -1 // the row of the night at this stop
	switch {
	case s.required && s.night:
		own, rows = 0, 0
	case s.night:
		for own = 0; own < rows && after.reach[own] < s.km+s.half; own++ {
		}
	}
	n := rows
	if own >= 0 {
		n++
	}
	t.reach, t.rowAt = make([]float64, 0, n), make([]float64, 0, n)
	t.cost = make([]float64, 0, n*b.size)
	for r := 0; r <= rows; r++ {
		if r == own {
			t.reach, t.rowAt = append(t.reach, s.km+s.half), append(t.rowAt, s.at+s.halfMin+s.stopMin)
			t.cost = append(t.cost, b.night(s, after, visit)...)
		}
		if r == rows {
			break
		}
		t.reach, t.rowAt = append(t.reach, after.reach[r]), append(t.rowAt, after.rowAt[r])
		at := len(t.cost)
		t.cost = append(t.cost, after.cost[r*b.size:(r+1)*b.size]...)
		if served || s.required {
			b.day(t.cost[at:], s, visit)
		}
	}
	for r := 1; r < n; r++ {
		for at := range b.size {
			t.cost[r*b.size+at] = min(t.cost[r*b.size+at], t.cost[(r-1)*b.size+at])
		}
	}
	t.reachAt = slices.Clone(t.rowAt)
	for r := n - 2; r >= 0; r-- {
		t.reachAt[r] = min(t.reachAt[r], t.reachAt[r+1])
	}
	return t
}

// day lowers a row to what it becomes where the stop may be visited by day.
func (b *nightsBound) day(row []float64, s *stopModel, visit float64) {
	via := slices.Clone(row)
	for k, tank := range b.tanks {
		if y := s.service(tank); y != nil && !y.guests {
			b.full(via, k, y.fixed)
		}
	}
	for at, c := range via {
		if s.required {
			row[at] = c + visit
		} else {
			row[at] = min(row[at], c+visit)
		}
	}
}

// full allows tank k to be filled at a cost.
func (b *nightsBound) full(row []float64, k int, cost float64) {
	step, n := b.stride[k], len(b.classes[k])
	for at := range row {
		if c := at / step % n; c < n-1 {
			row[at] = min(row[at], cost+row[at+(n-1-c)*step])
		}
	}
}

// night is the cost to go from just before a night at the stop.
func (b *nightsBound) night(s *stopModel, after *nightTable, visit float64) []float64 {
	m := b.m
	row := make([]float64, b.size)
	r := after.find(s.km+m.maxKm-s.half, s.at+m.maxMin-s.halfMin)
	shift := 0
	if b.counts > 1 {
		shift = s.nights * (b.size / b.counts)
	}
	for at := range row {
		row[at] = math.Inf(1)
		if r >= 0 && at+shift < b.size {
			row[at] = after.cost[r*b.size+at+shift]
		}
	}
	cost := visit + s.nightFee
	for t, u := range s.use {
		cost += b.worth[t] * u
	}
	for k, tank := range b.tanks {
		y := s.service(tank)
		step, n := b.stride[k], len(b.classes[k])
		u := s.use[tank]
		if y == nil && u == 0 {
			continue
		}
		old := slices.Clone(row)
		for at := range row {
			c := at / step % n
			best := math.Inf(1)
			if left := min(b.classes[k][c]-u, m.tanks[tank].cap); left >= m.tanks[tank].reserve-slack {
				best = old[at+(b.class(k, left)-c)*step]
			}
			if y != nil {
				best = min(best, y.fixed+old[at+(n-1-c)*step])
			}
			row[at] = best
		}
	}
	for at := range row {
		row[at] += cost
	}
	return row
}

// find is the last row in reach, −1 if none is.
func (t *nightTable) find(km, at float64) int {
	lo, hi := 0, len(t.reach)
	for lo < hi {
		mid := (lo + hi) / 2
		if t.reach[mid] <= km+slack && t.reachAt[mid] <= at+slack {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return lo - 1
}
