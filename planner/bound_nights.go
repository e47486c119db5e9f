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
	size   int       // of a row
	after  []*nightTable

	via, own, old []float64 // scratch
}

// A tally is how the bound takes the wished number of nights into account:
// counted in the table, or left out and a night given a wage.
type tally struct {
	counted bool
	wage    float64
}

// Up to easilyCounted nights are counted; more get a wage, and are counted up
// to mostCounted if that does not do.
const easilyCounted, mostCounted = 4, 8

type nightTable struct {
	reach   []float64 // km along the route, half detour included
	reachAt []float64 // minutes likewise; the least of this and all later rows
	rowAt   []float64 // minutes likewise, of this row
	cost    []float64 // row by row
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

func newNightsBound(m *model, tanks []int, d detail, worth []float64, nights tally, share func(stop int) float64) *nightsBound {
	b := &nightsBound{m: m, tanks: tanks, worth: worth, wage: nights.wage, after: make([]*nightTable, len(m.stops)+1)}
	b.counts = 1
	switch {
	case !nights.counted:
	case m.most <= mostCounted:
		b.counts = m.most + 1
	default: // whether they are too many is left out
		b.counts, b.enough = m.least+1, true
	}
	row := d.row / b.counts / (1 + len(m.stops)/100)
	b.classify(max(100, min(row, m.largestRow()/b.counts)), d.tank)
	b.size = 1
	for k := range tanks {
		b.stride = append(b.stride, b.size)
		b.size *= b.scales[k].n
		if b.scales[k].step > 0 {
			b.moving = append(b.moving, k)
		}
	}
	b.size *= b.counts
	b.priced = slices.IndexFunc(tanks, func(t int) bool { return !m.tanks[t].free })
	b.after[len(m.stops)] = b.end()
	for i := len(m.stops) - 1; i >= 0; i-- {
		b.after[i] = b.before(i, share(i)*m.visitCost(&m.stops[i], worth))
	}
	return b
}

// largestRow is how many classes keep all tables within some 64 MB.
func (m *model) largestRow() int {
	places, before := 0, math.Inf(-1)
	for i := range m.stops {
		if s := &m.stops[i]; s.night && s.km+s.half != before { // rows of one place are one
			places++
			before = s.km + s.half
		}
	}
	rows := 1 + float64(places)*min(1, m.maxKm/m.length)
	return int(8e6 / (rows * float64(len(m.stops)+1)))
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
	t := &nightTable{}
	own := -1 // the row of the night at this stop
	switch {
	case s.required && s.night:
		own, rows = 0, 0
	case s.night:
		for own = 0; own < rows && after.reach[own] < s.km+s.half; own++ {
		}
	}
	reach, at := s.km+s.half, s.at+s.halfMin+s.stopMin
	joins := own >= 0 && own < rows && after.reach[own] == reach && after.rowAt[own] == at // another stay at the same place
	n := rows
	if own >= 0 && !joins {
		n++
	}
	t.reach, t.rowAt = make([]float64, 0, n), make([]float64, 0, n)
	t.cost = make([]float64, 0, n*b.size)
	for r := 0; r <= rows; r++ {
		if r == own && !joins {
			t.reach, t.rowAt = append(t.reach, reach), append(t.rowAt, at)
			t.cost = append(t.cost, b.night(i, after, visit)...)
		}
		if r == rows {
			break
		}
		t.reach, t.rowAt = append(t.reach, after.reach[r]), append(t.rowAt, after.rowAt[r])
		at := len(t.cost)
		t.cost = append(t.cost, after.cost[r*b.size:(r+1)*b.size]...)
		if known {
			b.day(t.cost[at:], i, visit)
		}
		if r == own && joins {
			lowest(t.cost[at:], b.night(i, after, visit))
		}
	}
	if moved {
		for r := range n {
			b.move(t.cost[r*b.size:(r+1)*b.size], i)
		}
	}
	for r := 1; r < n; r++ {
		lowest(t.cost[r*b.size:(r+1)*b.size], t.cost[(r-1)*b.size:r*b.size])
	}
	t.reachAt = slices.Clone(t.rowAt)
	for r := n - 2; r >= 0; r-- {
		t.reachAt[r] = min(t.reachAt[r], t.reachAt[r+1])
	}
	return t
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

// day lowers a row to what it becomes where stop i may be visited by day.
func (b *nightsBound) day(row []float64, i int, visit float64) {
	s := &b.m.stops[i]
	via := append(b.via[:0], row...)
	b.via = via
	for k, tank := range b.tanks {
		if y := s.service(tank); y != nil && !y.guests {
			b.fill(via, k, y)
		}
	}
	for _, k := range b.moving { // the detour restores, too
		d := int(math.Ceil(-b.m.tanks[b.tanks[k]].perKm*2*s.half/b.scales[k].step - slack))
		b.up(via, k, d)
	}
	for at := range via {
		via[at] += visit
	}
	if s.required {
		copy(row, via)
	} else {
		lowest(row, via)
	}
}

// lowest lowers a to b where that is less. (The built-in min is a call where
// the page runs.)
func lowest(a, b []float64) {
	b = b[:len(a)]
	for n, x := range b {
		if x < a[n] {
			a[n] = x
		}
	}
}

// fill allows tank k to be filled by the service.
func (b *nightsBound) fill(row []float64, k int, y *serviceModel) {
	n := b.scales[k].n
	premium := b.premium(y)
	for c := range n - 1 { // what is read is behind what is written
		if premium == 0 {
			b.lower(row, row, k, c, n-1, y.fixed)
			continue
		}
		for to := c + 1; to < n; to++ {
			b.lower(row, row, k, c, to, y.fixed+premium*b.scales[k].from(b.scales[k].values[c], to))
		}
	}
}

// lower makes class c of tank k in row at most cost more than class to in from.
func (b *nightsBound) lower(row, from []float64, k, c, to int, cost float64) {
	step := b.stride[k]
	for base := 0; base < len(row); base += step * b.scales[k].n {
		at := row[base+c*step : base+c*step+step]
		for n, x := range from[base+to*step : base+to*step+step] {
			if x += cost; x < at[n] {
				at[n] = x
			}
		}
	}
}

// premium is what a unit costs at the service more than its worth.
func (b *nightsBound) premium(y *serviceModel) float64 {
	if b.m.tanks[y.tank].waste || b.m.tanks[y.tank].perKm != 0 {
		return 0
	}
	return max(0, y.price-b.worth[y.tank])
}

// up reads every class of tank k as one d higher, or as the highest.
func (b *nightsBound) up(row []float64, k, d int) {
	if d == 0 {
		return
	}
	step, n := b.stride[k], b.scales[k].n
	for base := 0; base < len(row); base += step * n {
		for c := range n - 1 { // what is read is behind what is written
			to := min(c+d, n-1)
			copy(row[base+c*step:base+c*step+step], row[base+to*step:base+to*step+step])
		}
	}
}

// moves says whether the classes before stop i are others than after it.
func (b *nightsBound) moves(i int) bool {
	for _, k := range b.moving {
		if b.scales[k].top[i] != b.scales[k].top[i+1] {
			return true
		}
	}
	return false
}

// move turns a row by classes after stop i into one by classes before it.
func (b *nightsBound) move(row []float64, i int) {
	for _, k := range b.moving {
		b.up(row, k, b.scales[k].top[i]-b.scales[k].top[i+1])
	}
}

// scratch is n numbers to write to before the next call.
func scratch(keep *[]float64, n int) []float64 {
	if cap(*keep) < n {
		*keep = make([]float64, n)
	}
	return (*keep)[:n]
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
			copy(at, after.cost[r*b.size+n*levels:])
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
			left := min(x.cap, min(x.cap, b.scales[k].headroom(i+1, c, s.km)-x.perKm*s.half)-u)
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
				b.lower(row, old, k, c, next[c], 0)
			}
			if y != nil && premium == 0 {
				b.lower(row, old, k, c, n-1, y.fixed)
			} else if y != nil {
				for to := max(next[c], 0); to < n; to++ {
					b.lower(row, old, k, c, to, y.fixed+premium*b.scales[k].from(lefts[c], to))
				}
			}
		}
	}
	for at := range row {
		row[at] += cost
	}
	return row
}

// place is where in the rows before stop i a label with this hand is.
func (b *nightsBound) place(i int, l *label, hand []float64) int {
	at := int(l.row)
	for _, k := range b.moving {
		at += b.stride[k] * b.scales[k].class(i, hand[b.tanks[k]]-b.scales[k].extra[l.stop+1])
	}
	return at
}

// row is the part of the place that does not move with the road. What could
// be bought of the priced tank is left to cost.
func (b *nightsBound) row(s *state) int {
	at := 0
	for k, t := range b.tanks {
		if b.scales[k].step > 0 {
			continue
		}
		hand := s.hand[t]
		if k != b.priced {
			hand += s.unpaid(t)
		}
		at += b.stride[k] * b.scales[k].class(0, hand)
	}
	if b.counts > 1 {
		at += min(s.nights, b.counts-1) * (b.size / b.counts)
	}
	return at
}

// cost is the cost to go from before stop i on, of a label that is on the
// route there, given the layers of the priced tank.
func (b *nightsBound) cost(i int, l *label, hand []float64, layers []layer) float64 {
	t := b.after[i]
	r := t.find(l.reach, l.reachAt)
	if r < 0 {
		return math.Inf(1)
	}
	at := r*b.size + b.place(i, l, hand)
	best := t.cost[at]
	if len(layers) == 0 {
		return best
	}
	// Higher classes for what it costs, beyond its worth, to get there.
	s, worth := &b.scales[b.priced], b.worth[b.tanks[b.priced]]
	x, paid := hand[b.tanks[b.priced]], 0.0
	most, used := x, 0.0 // of the first layer
	for _, y := range layers {
		most += y.amount
	}
	for c := s.class(0, x) + 1; c < s.n && s.values[c-1] < most-slack; c++ {
		at += b.stride[b.priced]
		for x < s.values[c-1] && len(layers) > 0 {
			amount := min(s.values[c-1]-x, layers[0].amount-used)
			paid += amount * max(0, layers[0].price-worth)
			x += amount
			if used += amount; used >= layers[0].amount {
				layers, used = layers[1:], 0
			}
		}
		best = min(best, paid+t.cost[at])
	}
	return best
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
