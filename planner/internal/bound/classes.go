package bound

import (
	"math"
	"slices"

	"ullage/planner/internal/model"
)

// classify chooses the scales, coarser than wanted for each tank if there would
// be too many classes in all.
func (b *Nights) classify(d Detail) {
	m := b.m
	rows := tableRows(m) * b.counts
	roomy := max(leastLevels, room(len(m.Stops))/leastRows/b.counts)
	most := min(roomy, max(100, min(d.Row/b.counts/(1+len(m.Stops)/100), mostCosts/rows)))
	if d.Moving > 0 { // they are packed: what counts is the time
		most = max(leastRow, min(d.Row, mostWork/(rows*d.Moving)))
		d.Moving = max(40, min(d.Moving, mostWork/(rows*most)))
	}
	size := 1
	many := -1 // the one tank with very many
	if d.Moving > 0 {
		many = slices.IndexFunc(b.Tanks, func(t int) bool { return m.Tanks[t].PerKm != 0 })
	}
	for k, t := range b.Tanks {
		if k == many {
			b.scales = append(b.scales, b.newScale(t, d.Moving))
			continue
		}
		s := b.newScale(t, min(most, d.Tank))
		b.scales = append(b.scales, s)
		b.Coarse = b.Coarse || s.n == d.Tank
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
		if n <= 2 && size <= roomy || n == 1 {
			return
		}
		b.Coarse = true
		b.scales[k] = b.newScale(b.Tanks[k], n-1)
		size = size / n * b.scales[k].n
	}
}

func (b *Nights) newScale(t, most int) scale {
	m := b.m
	x := &m.Tanks[t]
	if x.PerKm == 0 {
		v := reachable(m, t, most)
		return scale{n: len(v), values: v, cap: x.Cap}
	}
	s := scale{n: most, perKm: x.PerKm, cap: x.Cap, step: max((x.Cap-x.Reserve)/float64(max(most-2, 1)), 1e-3)}
	for i := 0; i <= len(m.Stops); i++ {
		km, _ := m.Position(i - 1)
		extra := 0.0
		if i > 0 {
			extra = s.extra[i-1]
			if !b.knows(i - 1) {
				extra -= x.PerKm * 2 * m.Stops[i-1].Half
			}
		}
		s.extra = append(s.extra, extra)
		s.top = append(s.top, int(math.Ceil((x.Cap+x.PerKm*km-extra-model.Slack)/s.step)))
	}
	return s
}

// reachable are the headrooms that nights can leave of a full tank or of the
// start, the most important ones if they are more than most.
func reachable(m *model.Model, t, most int) []float64 {
	x, uses := &m.Tanks[t], usesOf(m, t)
	found := []float64{x.Start}
	if m.Served(t) || m.Restores(t) {
		found[0] = x.Cap
	}
	add := func(v float64) {
		if v > x.Cap || v < x.Reserve-model.Slack || len(found) >= most {
			return
		}
		for _, w := range found {
			if math.Abs(v-w) < 1e-6 {
				return
			}
		}
		found = append(found, v)
	}
	if found[0] == x.Cap && len(uses) > 0 && uses[0] > 0 {
		for v := x.Cap - uses[0]; v >= x.Reserve-model.Slack && len(found) < most; v -= uses[0] {
			add(v)
		}
	}
	add(x.Start)
	for n := 0; n < len(found); n++ {
		for _, u := range uses {
			add(found[n] - u)
		}
	}
	slices.Sort(found)
	return found
}

// usesOf are what nights use of a tank, each once, the most first.
func usesOf(m *model.Model, t int) []float64 {
	var uses []float64
	for i := range m.Stops {
		if s := &m.Stops[i]; s.Night && s.Use[t] != 0 {
			uses = append(uses, s.Use[t])
		}
	}
	slices.Sort(uses)
	uses = slices.Compact(uses)
	slices.Reverse(uses)
	return uses
}
