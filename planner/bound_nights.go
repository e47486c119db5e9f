package planner

import "slices"

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
