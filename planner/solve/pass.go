package solve

import (
	"sort"

	"ullage/planner/internal/model"
)

// This file is one step of a sweep: past one stop.

// pass goes past stop i: every label visits it, in every way that may be part
// of a plan within the limit, or leaves it out. False if the context ends first:
// then nothing that the step did counts.
func (w *sweep) pass(i int) bool {
	stop := &w.m.Stops[i]
	next := w.next[:0]
	w.looks, w.was, w.least = w.looks[:0], w.was[:0], w.least[:0]
	for _, id := range w.pool {
		w.was, w.least = append(w.was, w.labels.all[id].tankCost), append(w.least, w.labels.all[id].bound)
	}
	if !stop.Required {
		for _, id := range w.pool {
			if w.skip(id, i) {
				next = append(next, id)
				w.looks = append(w.looks, w.labels.look(id, i+1, stop.Km))
			}
		}
	}
	for n, id := range w.pool {
		var ended bool
		if next, ended = w.visit(next, id, i, n); ended || w.ended(4+len(next)/compared) {
			return false
		}
	}
	if len(next) > w.width {
		sort.Slice(next, func(i, j int) bool { // less program in the page than a sort of this type
			a, b := w.labels.all[next[i]].bound, w.labels.all[next[j]].bound
			return a < b || a == b && next[i] < next[j]
		})
		next = w.narrow(next, stop.Km)
	}
	w.pool, w.next = next, w.pool
	return true
}

// narrow keeps the first width partial plans of each kind.
func (w *sweep) narrow(next []int32, km float64) []int32 {
	kept := next[:0]
	var taken [64][4]int
	for _, id := range next {
		n, level := w.kind(id, km)
		if taken[n][level] < w.width {
			taken[n][level]++
			kept = append(kept, id)
		} else {
			w.lost = model.Lesser(w.lost, w.labels.all[id].bound)
		}
	}
	return kept
}

// kind tells partial plans apart that the bound compares badly, so that the
// cheapest, which come to nothing in the end, do not crowd out all others: by
// nights below 64, and by the quarter of the level of a tank that driving
// restores.
func (w *sweep) kind(id int32, km float64) (nights, level int) {
	if w.m.ByNights() {
		nights = min(int(w.labels.all[id].Nights), 63)
	}
	if t := w.m.Restored; t >= 0 {
		x := &w.m.Tanks[t]
		level = max(0, min(int(4*(w.labels.handOf(id)[t]-x.PerKm*km)/x.Cap), 3))
	}
	return nights, level
}

// skip bounds a label anew without the stop.
func (w *sweep) skip(id int32, i int) bool {
	l := &w.labels.all[id]
	if w.m.Stops[i].Last&^l.lists != 0 {
		return false // the last chance to meet a list
	}
	hand := w.labels.handOf(id)
	changed := false
	for _, b := range w.b.Tanks {
		changed = changed || w.m.Stops[i].Service(b.Tank) != nil
	}
	var layers []model.Layer
	if t := w.b.PricedTank(); t >= 0 {
		layers = w.labels.layersOf(id, t)
	}
	nights := w.b.Nights.Cost(i+1, &l.Place, hand, layers)
	if changed {
		c := w.start + l.cost + w.b.Nights.Due(int(l.Nights))
		for _, t := range w.b.Alone {
			c -= w.b.Worth[t] * hand[t]
		}
		for _, b := range w.b.Tanks {
			c += b.ToGo(i+1, hand[b.Tank], w.labels.layersOf(id, b.Tank))
		}
		l.tankCost = c
	}
	l.bound = model.Greater(l.bound, l.tankCost+nights)
	return w.within(l.bound)
}

// visit appends the labels that visit stop i after label id, in every way
// that may be part of a plan within the limit. The label is the n-th of the pool.
// ended says that the context did before all was done.
func (w *sweep) visit(next []int32, id int32, i, n int) (_ []int32, ended bool) {
	stop := &w.m.Stops[i]
	w.view.Look(&w.labels.all[id].Place, w.labels.handOf(id), w.labels.layersAll(id), i, w.was[n])
	arrived, ways := false, 0
	for _, night := range [...]bool{true, false} {
		if night && !stop.Night || !night && stop.Required && stop.Night {
			continue
		}
		branches, settled := w.branches[i], stop.Settled
		if !night {
			branches, settled = branches&^stop.Guests, settled&^stop.Guests
		}
		for take := branches; ; take = (take - 1) & branches {
			useful := night || take|settled != 0 || stop.Required || stop.Lists != 0 || w.m.Wander
			if useful && w.within(w.view.Least(model.Deed{Night: night, Take: take | settled})) {
				if !arrived {
					w.labels.load(w.before, id)
					if arrived = w.m.Arrive(w.before, int(w.labels.all[id].Stop), i); !arrived {
						return next, false
					}
				}
				next = w.try(next, id, i, w.least[n], model.Deed{Night: night, Take: take | settled})
			}
			if take == 0 {
				break
			}
			if ways++; ways%manyWays == 0 && w.ended(manyWays) {
				return next, true
			}
		}
	}
	return next, false
}

const (
	manyWays = 64 // to visit a stop; only where there are more is it asked on the way
	compared = 16 // partial plans, at a glance, are as much work as one way
)

// try makes one visit, and keeps it if it may be part of a plan within the
// limit and no other label dominates it. least is the label's bound before the stop.
func (w *sweep) try(next []int32, id int32, i int, least float64, done model.Deed) []int32 {
	s := w.then
	s.CopyFrom(w.before)
	if !w.m.Stay(s, i, done) {
		return next
	}
	l := w.label(s, i)
	l.parent, l.Deed = id, done
	w.price(&l, s, i)
	l.bound = model.Greater(l.bound, least)
	if !w.within(l.bound) {
		return next
	}
	new := w.labels.add(l, s)
	km := w.m.Stops[i].Km
	own := w.labels.look(new, i+1, km)
	for n := range next {
		if w.looks[n].covers(&own) && w.labels.dominates(next[n], new, i+1, km) {
			w.labels.drop(new)
			return next
		}
	}
	kept := 0
	for n, o := range next {
		if !own.covers(&w.looks[n]) || !w.labels.dominates(new, o, i+1, km) {
			if kept < n {
				next[kept], w.looks[kept] = o, w.looks[n]
			}
			kept++
		}
	}
	w.looks = append(w.looks[:kept], own)
	return append(next[:kept], new)
}
