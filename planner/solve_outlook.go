package planner

import "math"

// This file bounds visits before they are worked out, from the tables alone:
// of a hundred ways to visit a stop only a few may be part of a plan within
// the limit.

// doubt is, in money, what rounding and slack can make out between a bound
// worked out in two ways.
const doubt = 1e-5

// An outlook is on the ways in which one label may visit one stop, by day and
// by night.
type outlook struct {
	fixed   float64 // cost so far, single tanks, and the visit
	layers  []layer // of the priced tank
	table   *nightTable
	bound   *nightsBound
	options []option
	ways    [2]way // by day, by night
}

// A way is what an outlook needs to know of a visit by day, or by night.
type way struct {
	cost float64 // what it adds
	row  int     // of the table after the stop; −1: cannot be
	at   int     // class there, no service taken
	hand float64 // of the priced tank, likewise
	up   [32]int // by tank of the nights' group: from there to the class with it served
}

// An option is what taking a service adds to a bound.
type option struct {
	cost  float64
	group int // of the nights' tanks; −1: none
}

// prepare works out the options. The bound of a single tank before a stop has
// the service there in it, and the tank's share of the visit.
func (w *sweep) prepare() {
	for i := range w.m.stops {
		s := &w.m.stops[i]
		w.visits = append(w.visits, w.m.visitCost(s, w.b.worth))
		var options []option
		for _, y := range s.serves {
			o := option{cost: y.fixed, group: -1}
			for _, b := range w.b.tanks {
				if b.tank == y.tank {
					o.cost = -b.shares[i]
				}
			}
			for k, t := range w.b.nights.tanks {
				if t == y.tank {
					o.group = k
				}
			}
			options = append(options, o)
		}
		w.options = append(w.options, options)
	}
}

// look sets the outlook of label id on stop i. was is the label's tankCost before the stop.
func (w *sweep) look(id int32, i int, was float64) *outlook {
	if w.visits == nil {
		w.prepare()
	}
	o, l, b, m := &w.view, &w.labels.all[id], w.b.nights, w.m
	s := &m.stops[i]
	o.fixed, o.table, o.bound, o.options, o.layers = was+w.visits[i], b.after[i+1], b, w.options[i], nil
	if p := w.b.pricedTank(); p >= 0 {
		o.layers = w.labels.layersOf(id, p)
	}
	day, night := &o.ways[0], &o.ways[1]
	day.row, day.at = o.table.find(l.reach-2*s.half, l.reachAt-2*s.halfMin-s.stopMin), b.counted(int(l.nights))
	if night.row = -1; s.night {
		night.row, night.at = o.table.find(s.km+m.maxKm-s.half, s.at+m.maxMin-s.halfMin), b.counted(int(l.nights)+s.nights)
		night.cost = s.nightFee - b.wage*float64(s.nights)
		for _, t := range w.b.alone {
			night.cost += w.b.worth[t] * s.use[t]
		}
	}
	hand := w.labels.handOf(id)
	for k, t := range b.tanks {
		scale, x := &b.scales[k], hand[t]
		switch {
		case scale.step > 0:
			x += scale.detour(s) - scale.extra[l.stop+1]
		case k != b.priced:
			for _, y := range w.labels.layersOf(id, t) {
				x += y.amount
			}
		}
		for n := range o.ways {
			if n == 1 && s.night {
				x -= s.use[t]
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
	return o
}

// least is a bound of any plan that goes on with this visit. Bit k of take is service k.
func (o *outlook) least(night bool, take uint32) float64 {
	y := &o.ways[0]
	if night {
		y = &o.ways[1]
	}
	if y.row < 0 {
		return math.Inf(1)
	}
	cost, at, layers := o.fixed+y.cost, y.at, o.layers
	for k := range o.options {
		if take&(1<<k) == 0 {
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
		return cost + o.bound.withLayers(o.table, at, y.row, y.hand, layers) - doubt
	}
	return cost + o.table.at(at, y.row) - doubt
}
