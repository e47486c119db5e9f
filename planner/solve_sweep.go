package planner

import (
	"context"
	"math"
)

// This file is the search: one sweep over the stops in their order, with all
// partial plans at once.

// A sweep keeps partial plans whose bound is within limit, the best width of
// them after every stop.
type sweep struct {
	m      *model
	b      *bounds
	limit  float64
	width  int
	most   int // labels kept in all before the sweep gives up
	labels labels
	pool   []int32
	next   []int32   // scratch
	looks  []look    // of next
	was    []float64 // of pool: tankCost before the stop
	lost   float64   // the least bound of anything thrown away that dominance does not excuse
	best   int32     // label of the best whole plan, −1 if none
	cost   float64   // its cost
	then   *state
	before *state
	start  float64 // constant part of every bound

	visits   []float64   // by stop: what any visit costs
	options  [][]option  // by stop and service
	extra    [][]float64 // by single tank and stop: see [tankBound.extra]
	branches []uint32    // by stop: services to decide on within the limit
	view     outlook     // scratch
}

func newSweep(m *model, b *bounds) *sweep {
	n := len(m.tanks)
	return &sweep{m: m, b: b, then: newState(n), before: newState(n), start: b.constant()}
}

// run sweeps once. It returns the context's error if that ends it.
func (w *sweep) run(ctx context.Context, limit float64, width, most int) error {
	w.limit, w.width, w.most = limit, width, most
	w.lost, w.best, w.cost = math.Inf(1), -1, math.Inf(1)
	w.labels = labels{m: w.m, all: w.labels.all[:0], hand: w.labels.hand[:0], layers: w.labels.layers[:0]}
	w.pool = w.pool[:0]
	w.begin()
	w.leaveOut()
	for i := range w.m.stops {
		if len(w.pool) == 0 {
			return nil
		}
		if w.idle(i) {
			continue
		}
		open := w.open()
		if err := w.pass(ctx, i); err != nil {
			w.lost = min(w.lost, open)
			return err
		}
		if len(w.labels.all) > w.most {
			w.lost = min(w.lost, w.open())
			return nil
		}
	}
	for _, id := range w.pool {
		w.labels.load(w.then, id)
		l := w.labels.all[id]
		if !w.m.finish(w.then, int(l.stop)) {
			continue
		}
		c := w.then.cost
		if c < w.cost-tie || c <= w.cost+tie && w.best >= 0 && w.labels.first(id, w.best) {
			w.cost, w.best = c, id
		}
	}
	return nil
}

// open is the least bound of all partial plans kept.
func (w *sweep) open() float64 {
	least := math.Inf(1)
	for _, id := range w.pool {
		least = lesser(least, w.labels.all[id].bound)
	}
	return least
}

// root is the bound of the whole trip.
func (w *sweep) root() float64 {
	w.limit, w.lost = math.Inf(-1), math.Inf(1)
	w.labels.m = w.m
	w.begin()
	return w.lost
}

func (w *sweep) begin() {
	s := w.then
	s.cost, s.km, s.min, s.nights, s.visits = 0, 0, 0, 0, 0
	for t := range w.m.tanks {
		s.hand[t] = w.m.tanks[t].start
		s.layers[t] = s.layers[t][:0]
	}
	l := w.label(s, -1)
	l.parent = -1
	w.price(&l, s, -1)
	if l.bound <= w.limit {
		w.pool = append(w.pool, w.labels.add(l, s))
	} else {
		w.lost = lesser(w.lost, l.bound)
	}
}

// label is a state after the visit of a stop, bound not yet known.
func (w *sweep) label(s *state, stop int) label {
	km, at := w.m.position(stop)
	return label{cost: s.cost, km: s.km, min: s.min, stop: int32(stop), nights: int32(s.nights), visits: int32(s.visits),
		row: int32(w.b.nights.row(s)), reach: km + w.m.maxKm - s.km, reachAt: at + w.m.maxMin - s.min}
}

// price bounds a new label from after stop i on.
func (w *sweep) price(l *label, s *state, i int) {
	l.bound = math.Inf(1)
	var layers []layer
	if t := w.b.pricedTank(); t >= 0 {
		layers = s.layers[t]
	}
	nights := w.b.nights.cost(i+1, l, s.hand, layers)
	if math.IsInf(nights, 1) {
		return
	}
	fixed := w.start + l.cost + w.b.nights.due(s.nights)
	for _, t := range w.b.alone {
		fixed -= w.b.worth[t] * s.hand[t]
	}
	l.tankCost = fixed
	for _, b := range w.b.tanks {
		l.tankCost += b.from(s, i+1)
	}
	l.bound = l.tankCost + nights
}
