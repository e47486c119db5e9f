package planner

import (
	"context"
	"math"
	"sort"
)

// This file is one step of a sweep: past one stop.

// pass goes past stop i: every label visits it, in every way that may be part
// of a plan within the limit, or leaves it out.
func (w *sweep) pass(ctx context.Context, i int) error {
	stop := &w.m.stops[i]
	next := w.next[:0]
	w.looks, w.was = w.looks[:0], w.was[:0]
	if !stop.required {
		for _, id := range w.pool {
			w.was = append(w.was, w.labels.all[id].tankCost)
			if w.skip(id, i) {
				next = append(next, id)
				w.looks = append(w.looks, w.labels.look(id, i+1, stop.km))
			}
		}
	}
	for n, id := range w.pool {
		if n%16 == 0 && ctx.Err() != nil {
			return ctx.Err()
		}
		was := w.labels.all[id].tankCost
		if !stop.required {
			was = w.was[n]
		}
		next = w.visit(next, id, i, was)
	}
	if len(next) > w.width {
		sort.Slice(next, func(i, j int) bool { // less program in the page than a sort of this type
			a, b := w.labels.all[next[i]].bound, w.labels.all[next[j]].bound
			return a < b || a == b && next[i] < next[j]
		})
		next = w.narrow(next, stop.km)
	}
	w.pool, w.next = next, w.pool
	return nil
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
			w.lost = lesser(w.lost, w.labels.all[id].bound)
		}
	}
	return kept
}

// kind tells partial plans apart that the bound compares badly, so that the
// cheapest, which come to nothing in the end, do not crowd out all others: by
// nights below 64, and by the quarter of the level of a tank that driving
// restores.
func (w *sweep) kind(id int32, km float64) (nights, level int) {
	if w.m.byNights() {
		nights = min(int(w.labels.all[id].nights), 63)
	}
	if t := w.m.restored; t >= 0 {
		x := &w.m.tanks[t]
		level = max(0, min(int(4*(w.labels.handOf(id)[t]-x.perKm*km)/x.cap), 3))
	}
	return nights, level
}

// byNights says whether the number of nights so far makes a difference: if so
// many are wanted, or if places are closed at times.
func (m *model) byNights() bool { return m.least > 0 || m.opens[0] }

// skip bounds a label anew without the stop.
func (w *sweep) skip(id int32, i int) bool {
	l := &w.labels.all[id]
	hand := w.labels.handOf(id)
	changed := false
	for _, b := range w.b.tanks {
		changed = changed || w.m.stops[i].service(b.tank) != nil
	}
	var layers []layer
	if t := w.b.pricedTank(); t >= 0 {
		layers = w.labels.layersOf(id, t)
	}
	nights := w.b.nights.cost(i+1, l, hand, layers)
	if changed {
		c := w.start + l.cost + w.b.nights.due(int(l.nights))
		for _, t := range w.b.alone {
			c -= w.b.worth[t] * hand[t]
		}
		for _, b := range w.b.tanks {
			c += b.togo(i+1, hand[b.tank], w.labels.layersOf(id, b.tank))
		}
		l.tankCost = c
	}
	l.bound = l.tankCost + nights
	return w.within(l.bound)
}

func (w *sweep) within(bound float64) bool {
	if bound <= w.limit {
		return !math.IsInf(bound, 1)
	}
	w.lost = lesser(w.lost, bound)
	return false
}

// visit appends the labels that visit stop i after label id, in every way
// that may be part of a plan within the limit. was is the label's tankCost
// before the stop was passed.
func (w *sweep) visit(next []int32, id int32, i int, was float64) []int32 {
	stop := &w.m.stops[i]
	view := w.look(id, i, was)
	arrived := false
	for _, night := range [...]bool{true, false} {
		if night && !stop.night || !night && stop.required && stop.night {
			continue
		}
		branches, settled := w.branches[i], stop.settled
		if !night {
			branches, settled = branches&^stop.guests, settled&^stop.guests
		}
		for take := branches; ; take = (take - 1) & branches {
			useful := night || take|settled != 0 || stop.required || w.m.wander
			if useful && w.within(view.least(night, take|settled)) {
				if !arrived {
					w.labels.load(w.before, id)
					if arrived = w.m.arrive(w.before, int(w.labels.all[id].stop), i); !arrived {
						return next
					}
				}
				next = w.try(next, id, i, night, take|settled)
			}
			if take == 0 {
				break
			}
		}
	}
	return next
}

// try makes one visit, and keeps it if it may be part of a plan within the
// limit and no other label dominates it.
func (w *sweep) try(next []int32, id int32, i int, night bool, take uint32) []int32 {
	s := w.then
	s.copyFrom(w.before)
	if !w.m.stay(s, i, night, take) {
		return next
	}
	l := w.label(s, i)
	l.parent, l.night, l.take = id, night, take
	w.price(&l, s, i)
	if !w.within(l.bound) {
		return next
	}
	new := w.labels.add(l, s)
	km := w.m.stops[i].km
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

// drop takes back the label added last.
func (a *labels) drop(id int32) {
	a.layers = a.layers[:a.all[id].layersAt]
	a.hand = a.hand[:int(id)*len(a.m.tanks)]
	a.all = a.all[:id]
}
