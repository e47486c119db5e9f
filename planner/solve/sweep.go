package solve

import (
	"context"
	"math"

	"ullage/planner/internal/bound"
	"ullage/planner/internal/model"
)

// This file is the search: one sweep over the stops in their order, with all
// partial plans at once.

// A sweep keeps partial plans whose bound is within limit, the best width of
// them after every stop.
type sweep struct {
	m      *model.Model
	b      *bound.Bounds
	limit  float64
	width  int
	most   int // labels kept in all before the sweep gives up
	labels labels
	pool   []int32
	next   []int32   // scratch
	looks  []look    // of next
	was    []float64 // of pool: tankCost before the stop
	least  []float64 // likewise: bound
	lost   float64   // the least bound of anything thrown away that dominance does not excuse
	best   int32     // label of the best whole plan, −1 if none
	cost   float64   // its cost
	then   *model.State
	before *model.State
	start  float64 // constant part of every bound

	ctx     context.Context // of the run; nil: none
	work    int             // done since ctx was asked
	stopped func() bool     // that it has ended, asked now

	extra    [][]float64 // by single tank and stop: see [bound.Tank.Extra]
	branches []uint32    // by stop: services to decide on within the limit
	view     bound.Outlook
}

func newSweep(m *model.Model, b *bound.Bounds) *sweep {
	n := len(m.Tanks)
	return &sweep{m: m, b: b, view: bound.NewOutlook(b), then: model.NewState(n), before: model.NewState(n), start: b.Constant()}
}

// ended says whether the context of the run has, and asks it now and then: it is
// told how much work was done since.
func (w *sweep) ended(work int) bool {
	if w.work += work; w.work < pollWork {
		return false
	}
	w.work = 0
	return w.ctx.Err() != nil
}

// pollWork is what is done between two looks at the context: ways of a visit looked
// at, partial plans compared; about a millisecond.
const pollWork = 1024

// open is the least bound of all partial plans kept.
func (w *sweep) open() float64 {
	least := math.Inf(1)
	for _, id := range w.pool {
		least = model.Lesser(least, w.labels.all[id].bound)
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
	s.Cost, s.Km, s.Min, s.Nights, s.Visits = 0, 0, 0, 0, 0
	s.Slept, s.Lists = math.Inf(-1), 0
	for t := range w.m.Tanks {
		s.Hand[t] = w.m.Tanks[t].Start
		s.Layers[t] = s.Layers[t][:0]
	}
	l := w.label(s, -1)
	l.parent = -1
	w.price(&l, s, -1)
	if l.bound <= w.limit {
		w.pool = append(w.pool, w.labels.add(l, s))
	} else {
		w.lost = model.Lesser(w.lost, l.bound)
	}
}

// label is a state after the visit of a stop, bound not yet known.
func (w *sweep) label(s *model.State, stop int) label {
	km, at := w.m.Position(stop)
	return label{cost: s.Cost, km: s.Km, min: s.Min, slept: s.Slept, lists: s.Lists, visits: int32(s.Visits),
		Place: bound.Place{Stop: int32(stop), Nights: int32(s.Nights), Row: int32(w.b.Nights.Row(s)), Reach: km + w.m.MaxKm - s.Km, ReachAt: at + w.m.MaxMin - s.Min}}
}

// price bounds a new label from after stop i on.
func (w *sweep) price(l *label, s *model.State, i int) {
	l.bound = math.Inf(1)
	var layers []model.Layer
	if t := w.b.PricedTank(); t >= 0 {
		layers = s.Layers[t]
	}
	var nights float64
	if l.Night {
		nights = w.b.Nights.Dawn(i, &l.Place, s.Hand, layers)
	} else {
		nights = w.b.Nights.Cost(i+1, &l.Place, s.Hand, layers)
	}
	if math.IsInf(nights, 1) {
		return
	}
	fixed := w.start + l.cost + w.b.Nights.Due(s.Nights)
	for _, t := range w.b.Alone {
		fixed -= w.b.Worth[t] * s.Hand[t]
	}
	l.tankCost = fixed
	for _, b := range w.b.Tanks {
		l.tankCost += b.From(s, i+1)
	}
	l.bound = l.tankCost + nights
}

func (w *sweep) within(bound float64) bool {
	if bound <= w.limit {
		return !math.IsInf(bound, 1)
	}
	w.lost = model.Lesser(w.lost, bound)
	return false
}
