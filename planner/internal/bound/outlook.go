package bound

import (
	"math"

	"ullage/planner/internal/model"
)

// This file bounds visits before they are worked out, from the tables alone:
// of a hundred ways to visit a stop only a few may be part of a plan within
// the limit.

// Doubt is, in money, what rounding and slack can make out between a bound
// worked out in two ways.
const Doubt = 1e-5

// An Outlook is on the ways in which one partial plan may visit one stop, by
// day and by night.
type Outlook struct {
	b      *Bounds
	visits []float64  // by stop: what any visit costs
	served [][]option // by stop and service

	fixed   float64       // cost so far, single tanks, and the visit
	layers  []model.Layer // of the priced tank
	table   *nightTable
	bound   *Nights
	options []option
	ways    [2]way // by day, by night
}

// A way is what an outlook needs to know of a visit by day, or by night.
type way struct {
	cost  float64 // what it adds
	table *nightTable
	row   int     // of the table after the stop; −1: cannot be
	at    int     // class there, no service taken
	hand  float64 // of the priced tank, likewise
	up    [32]int // by tank of the nights' group: from there to the class with it served
}

// An option is what taking a service adds to a bound.
type option struct {
	cost  float64
	group int // of the nights' tanks; −1: none
}

// NewOutlook sees nothing yet.
func NewOutlook(b *Bounds) Outlook { return Outlook{b: b} }

// prepare works out the options. The bound of a single tank before a stop has
// the service there in it, and the tank's share of the visit.
func (o *Outlook) prepare() {
	m := o.b.m
	o.visits, o.served = make([]float64, 0, len(m.Stops)), make([][]option, 0, len(m.Stops))
	for i := range m.Stops {
		s := &m.Stops[i]
		o.visits = append(o.visits, visitCost(m, s, o.b.Worth))
		options := make([]option, 0, len(s.Serves))
		for _, y := range s.Serves {
			x := option{cost: y.Fixed, group: -1}
			for _, b := range o.b.Tanks {
				if b.Tank == y.Tank {
					x.cost = -b.shares[i]
				}
			}
			for k, t := range o.b.Nights.Tanks {
				if t == y.Tank {
					x.group = k
				}
			}
			options = append(options, x)
		}
		o.served = append(o.served, options)
	}
}

// Look sets the outlook from a place on stop i, with this hand and these layers
// of all tanks. was is what cost so far and the single tanks come to before the stop.
func (o *Outlook) Look(l *Place, hand []float64, layers []model.Layer, i int, was float64) {
	if o.visits == nil {
		o.prepare()
	}
	b, m := o.b.Nights, o.b.m
	s := &m.Stops[i]
	o.fixed, o.table, o.bound, o.options, o.layers = was+o.visits[i], b.after[i+1], b, o.served[i], nil
	if p := o.b.PricedTank(); p >= 0 {
		o.layers = model.LayersOf(layers, p)
	}
	day, night := &o.ways[0], &o.ways[1]
	day.table = o.table
	day.row, day.at = o.table.find(l.Reach-2*s.Half, l.ReachAt-2*s.HalfMin-s.StopMin), b.counted(int(l.Nights))
	if night.row = -1; s.Night {
		night.table, night.row = b.next(i)
		night.at = b.counted(int(l.Nights) + s.Nights)
		night.cost = s.NightFee - b.wage*float64(s.Nights)
		for _, t := range o.b.Alone {
			night.cost += o.b.Worth[t] * s.Use[t]
		}
	}
	for k, t := range b.Tanks {
		scale, x := &b.scales[k], hand[t]
		switch {
		case scale.step > 0:
			x += scale.detour(s) - scale.extra[l.Stop+1]
		case k != b.priced:
			for _, y := range model.LayersOf(layers, t) {
				x += y.Amount
			}
		}
		for n := range o.ways {
			if n == 1 && s.Night {
				x -= s.Use[t]
			}
			if y := &o.ways[n]; y.row >= 0 {
				c := scale.class(i+1, x)
				y.at += c * b.stride[k]
				y.up[k] = (scale.n - 1 - c) * b.stride[k]
				if k == b.priced {
					y.hand = x
				}
			}
		}
	}
}

// Least is a bound of any plan that goes on with this visit.
func (o *Outlook) Least(done model.Deed) float64 {
	y := &o.ways[0]
	if done.Night {
		y = &o.ways[1]
	}
	if y.row < 0 {
		return math.Inf(1)
	}
	cost, at, layers := o.fixed+y.cost, y.at, o.layers
	for k := range o.options {
		if done.Take&(1<<k) == 0 {
			continue
		}
		x := &o.options[k]
		cost += x.cost
		if x.group < 0 {
			continue
		}
		at += y.up[x.group]
		if x.group == o.bound.priced { // full, and nothing paid for it
			layers = nil
		}
	}
	if len(layers) > 0 {
		return cost + o.bound.withLayers(y.table, at, y.row, y.hand, layers) - Doubt
	}
	return cost + y.table.at(at, y.row) - Doubt
}
