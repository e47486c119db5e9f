package planner

import (
	"math"
	"slices"
)

// This file divides the headroom of a tank into classes for the bound by
// nights. Headroom is rounded up to its class, so that the bound is never too
// much.

// A detail is how many classes there may be.
type detail struct {
	row    int // in all, on a short route
	tank   int // of one tank
	moving int // of the first tank that driving restores; 0: as of others. If not 0, row is that of the others
}

var (
	sketch = detail{1 << 20, 3, 0}
	rough  = detail{1600, 12, 0}
	fine   = detail{1600, 48, 0}
	finest = detail{12800, 48, 0}
	sharp  = detail{48, 48, 160}
)

// All tables of a bound keep mostCosts numbers, some 64 MB, or see to mostWork
// of them, about a second.
const mostCosts, mostWork = 8e6, 3e8

// rows is how many rows all tables have, about.
func (m *model) rows() int {
	places, before := 0, math.Inf(-1)
	for i := range m.stops {
		if s := &m.stops[i]; s.night && s.km+s.half != before { // rows of one place are one
			places++
			before = s.km + s.half
		}
	}
	return int((1 + float64(places)*min(1, m.maxKm/m.length)) * float64(len(m.stops)+1))
}

// A scale is the classes of one tank, the highest being a full tank. Of a tank
// that driving leaves alone they are the headrooms that nights can leave. Of
// one that driving restores they are steps of hand = headroom + perKm·km,
// which driving does not change; as a full tank is less by that measure with
// every km, the steps move along. Detours restore, too: those of stops that
// this bound knows nothing of are all taken as made (extra).
type scale struct {
	n      int
	values []float64 // ascending; of a tank that driving leaves alone
	perKm  float64
	cap    float64
	step   float64   // of a tank that driving restores, else 0
	top    []int     // by stop: the highest class before it, in steps
	extra  []float64 // by stop: what detours before it may have restored
}

// class is the lowest one that is not below the hand, before stop i. Of a tank
// that driving restores, hand is less the extra of before.
func (s *scale) class(i int, hand float64) int {
	if s.step > 0 {
		c := int(math.Ceil((hand-slack)/s.step)) - s.top[i] + s.n - 1
		return max(0, min(c, s.n-1))
	}
	n := 0
	for n < s.n-1 && s.values[n] < hand-slack {
		n++
	}
	return n
}

// headroom of class c before stop i, at km.
func (s *scale) headroom(i, c int, km float64) float64 {
	if s.step > 0 {
		return lesser(s.cap, s.step*float64(c+s.top[i]-s.n+1)-s.perKm*km+s.extra[i])
	}
	return s.values[c]
}

// from is the least that goes into the tank between a headroom and a class.
func (s *scale) from(headroom float64, class int) float64 {
	if class == 0 {
		return 0
	}
	return greater(0, s.values[class-1]-headroom)
}

// detour is what the way to a stop and back restores.
func (s *scale) detour(stop *stopModel) float64 { return -s.perKm * 2 * stop.half }

// offset is headroom less what class measures, before stop i at km.
func (s *scale) offset(i int, km float64) float64 {
	if s.step == 0 {
		return 0
	}
	return s.extra[i] - s.perKm*km
}

// classify chooses the scales, coarser than wanted for each tank if there would
// be too many classes in all.
func (b *nightsBound) classify(d detail) {
	m := b.m
	rows := m.rows() * b.counts
	most := max(100, min(d.row/b.counts/(1+len(m.stops)/100), mostCosts/rows))
	if d.moving > 0 { // they are packed: what counts is the time
		most = max(16, min(d.row, mostWork/(rows*d.moving)))
		d.moving = max(40, min(d.moving, mostWork/(rows*most)))
	}
	size := 1
	many := -1 // the one tank with very many
	if d.moving > 0 {
		many = slices.IndexFunc(b.tanks, func(t int) bool { return m.tanks[t].perKm != 0 })
	}
	for k, t := range b.tanks {
		if k == many {
			b.scales = append(b.scales, b.newScale(t, d.moving))
			continue
		}
		s := b.newScale(t, min(most, d.tank))
		b.scales = append(b.scales, s)
		b.coarse = b.coarse || s.n == d.tank
		size *= s.n
	}
	for size > most {
		k := -1
		for j := range b.scales {
			if j != many && (k < 0 || b.scales[j].n > b.scales[k].n) {
				k = j
			}
		}
		n := b.scales[k].n
		if n <= 2 {
			return
		}
		b.coarse = true
		b.scales[k] = b.newScale(b.tanks[k], n-1)
		size = size / n * b.scales[k].n
	}
}

func (b *nightsBound) newScale(t, most int) scale {
	m := b.m
	x := &m.tanks[t]
	if x.perKm == 0 {
		v := m.reachable(t, most)
		return scale{n: len(v), values: v, cap: x.cap}
	}
	s := scale{n: most, perKm: x.perKm, cap: x.cap, step: max((x.cap-x.reserve)/float64(max(most-2, 1)), 1e-3)}
	for i := 0; i <= len(m.stops); i++ {
		km, _ := m.position(i - 1)
		extra := 0.0
		if i > 0 {
			extra = s.extra[i-1]
			if !b.knows(i - 1) {
				extra -= x.perKm * 2 * m.stops[i-1].half
			}
		}
		s.extra = append(s.extra, extra)
		s.top = append(s.top, int(math.Ceil((x.cap+x.perKm*km-extra-slack)/s.step)))
	}
	return s
}

// reachable are the headrooms that nights can leave of a full tank or of the
// start, the most important ones if they are more than most.
func (m *model) reachable(t, most int) []float64 {
	x := &m.tanks[t]
	var uses []float64
	for i := range m.stops {
		if s := &m.stops[i]; s.night && s.use[t] != 0 && !slices.Contains(uses, s.use[t]) {
			uses = append(uses, s.use[t])
		}
	}
	slices.Sort(uses)
	slices.Reverse(uses)
	found := []float64{x.start}
	if m.served(t) || m.restores(t) {
		found[0] = x.cap
	}
	add := func(v float64) {
		if v > x.cap || v < x.reserve-slack || len(found) >= most {
			return
		}
		for _, w := range found {
			if math.Abs(v-w) < 1e-6 {
				return
			}
		}
		found = append(found, v)
	}
	if found[0] == x.cap && len(uses) > 0 && uses[0] > 0 {
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

// served says whether any stop serves the tank.
func (m *model) served(t int) bool {
	for i := range m.stops {
		if m.stops[i].service(t) != nil {
			return true
		}
	}
	return false
}
