package planner

import "math"

// This file keeps the partial plans of a search. Labels and dominance are as
// in Irnich and Desaulniers, "Shortest path problems with resource
// constraints", in: Column Generation, Springer, 2005.

// A label is a partial plan that ends with the visit of a stop.
type label struct {
	cost     float64
	km, min  float64 // since the last night, back on the route
	bound    float64 // of any plan that goes on from here
	stop     int32   // visited last; −1: none
	parent   int32
	nights   int32
	visits   int32
	take     uint32 // services taken
	night    bool
	row      int32 // place in the rows of the nights' tables
	layersAt int32
	layersTo int32
	reach    float64 // km along the route within the day's limit
	reachAt  float64 // minutes likewise
	tankCost float64 // bounds of single tanks
}

type labels struct {
	m      *model
	all    []label
	hand   []float64 // tanks per label
	layers []layer
}

// add keeps a state as a label, whose other fields are given.
func (a *labels) add(l label, s *state) int32 {
	id := int32(len(a.all))
	l.layersAt = int32(len(a.layers))
	for _, ls := range s.layers {
		a.layers = append(a.layers, ls...)
	}
	l.layersTo = int32(len(a.layers))
	a.hand = append(a.hand, s.hand...)
	a.all = append(a.all, l)
	return id
}

func (a *labels) handOf(id int32) []float64 {
	n := len(a.m.tanks)
	return a.hand[int(id)*n : (int(id)+1)*n]
}

// load makes s the state of a label.
func (a *labels) load(s *state, id int32) {
	l := &a.all[id]
	s.cost, s.km, s.min, s.nights, s.visits = l.cost, l.km, l.min, int(l.nights), int(l.visits)
	copy(s.hand, a.handOf(id))
	for t := range s.layers {
		s.layers[t] = s.layers[t][:0]
	}
	for _, y := range a.layers[l.layersAt:l.layersTo] {
		s.layers[y.tank] = append(s.layers[y.tank], y)
	}
}

// layersOf are the layers of a tank.
func (a *labels) layersOf(id int32, tank int) []layer {
	l := &a.all[id]
	ls := a.layers[l.layersAt:l.layersTo]
	from := 0
	for from < len(ls) && int(ls[from].tank) < tank {
		from++
	}
	to := from
	for to < len(ls) && int(ls[to].tank) == tank {
		to++
	}
	return ls[from:to]
}

// A look is what of a label rules out most dominance at a glance, at one stop.
type look struct {
	cost, reach        float64
	free               [4]float32 // in hand of the first tanks that are free and that driving does not restore
	restored           float32    // of the first free one that it does restore
	nights, least, few int32      // nights so far; another label needs as many as least, and not more than few
}

// look at a label before stop i, at km.
func (a *labels) look(id int32, i int, km float64) look {
	m, l := a.m, &a.all[id]
	k := look{cost: l.cost, reach: l.reach, nights: l.nights, least: min(l.nights, int32(m.least)), few: math.MaxInt32}
	if m.opens[i] {
		k.least, k.few = l.nights, l.nights
	} else if m.most < math.MaxInt32 {
		k.few = l.nights
	}
	hand := a.handOf(id)
	for n, t := range m.plain {
		k.free[n] = float32(hand[t])
	}
	if t := m.restored; t >= 0 {
		k.restored = float32(lesser(m.tanks[t].cap, hand[t]-m.tanks[t].perKm*km))
	}
	return k
}

// covers says whether label k may dominate o; false is certain.
func (k *look) covers(o *look) bool {
	const rounding = 1e-2
	return k.cost <= o.cost+tie && k.nights >= o.least && k.nights <= o.few && k.reach >= o.reach-slack &&
		k.free[0] >= o.free[0]-rounding && k.free[1] >= o.free[1]-rounding &&
		k.free[2] >= o.free[2]-rounding && k.free[3] >= o.free[3]-rounding && k.restored >= o.restored-rounding
}

// dominates says whether whatever label y can do, label x can do as well
// before or at stop i, and not at a higher cost.
func (a *labels) dominates(x, y int32, i int, km float64) bool {
	m, l, o := a.m, &a.all[x], &a.all[y]
	gain := o.cost - l.cost
	if gain < -tie || l.reach < o.reach-slack || l.reachAt < o.reachAt-slack {
		return false
	}
	if l.nights != o.nights && m.opens[i] || l.nights > o.nights && m.most < math.MaxInt32 || l.nights < min(o.nights, int32(m.least)) {
		return false
	}
	if m.opens[i] && l.reachAt > o.reachAt { // what is saved now may be lost to waiting
		if gain -= m.money * (l.reachAt - o.reachAt); gain < -tie {
			return false
		}
	}
	hx, hy := a.handOf(x), a.handOf(y)
	for t := range m.tanks {
		if !m.tanks[t].free {
			continue
		}
		have, want := hx[t], hy[t]
		if k := &m.tanks[t]; k.perKm < 0 {
			have, want = lesser(k.cap, have-k.perKm*km), lesser(k.cap, want-k.perKm*km)
		}
		if have < want-slack {
			return false
		}
	}
	for t := range m.tanks {
		if m.tanks[t].free {
			continue
		}
		floor := math.Inf(-1)
		if k := &m.tanks[t]; k.perKm >= 0 {
			floor = k.reserve + k.perKm*km
		}
		gain -= dearest(hx[t], a.layersOf(x, t), hy[t], a.layersOf(y, t), floor)
		if gain < -tie {
			return false
		}
	}
	return gain > tie || a.first(x, y)
}

// dearest is the most that having x in hand costs more with the one purse than
// with the other, over all x from floor on that the other can have.
func dearest(hand float64, layers []layer, other float64, others []layer, floor float64) float64 {
	most := other
	for _, l := range others {
		most += l.amount
	}
	total := hand
	for _, l := range layers {
		total += l.amount
	}
	if total < most-slack {
		return math.Inf(1)
	}
	x := greater(floor, lesser(hand, other))
	p, q := newPurse(hand, layers), newPurse(other, others)
	diff := p.pay(x) - q.pay(x)
	worst := diff
	for x < most {
		x = lesser(lesser(p.next(x), q.next(x)), most)
		diff += p.pay(x) - q.pay(x)
		worst = greater(worst, diff)
	}
	return worst
}

// A purse walks up the cost of having more in hand.
type purse struct {
	at     float64 // in hand
	layers []layer
	end    float64 // in hand when the first layer is used up
}

func newPurse(hand float64, layers []layer) purse {
	p := purse{at: hand, layers: layers}
	p.settle()
	return p
}

// settle drops layers that make no difference to what is in hand, and finds
// the end of the first other one.
func (p *purse) settle() {
	for len(p.layers) > 0 {
		p.end = p.at + p.layers[0].amount
		if p.end > p.at {
			return
		}
		p.layers = p.layers[1:]
	}
}

// pay is what it costs to have x in hand, beyond what was paid before.
func (p *purse) pay(x float64) float64 {
	cost := 0.0
	for len(p.layers) > 0 && x >= p.end {
		cost += (p.end - p.at) * p.layers[0].price
		p.at, p.layers = p.end, p.layers[1:]
		p.settle()
	}
	if len(p.layers) > 0 && x > p.at {
		cost += (x - p.at) * p.layers[0].price
		p.at = x
	}
	return cost
}

// next is where the price changes after x.
func (p *purse) next(x float64) float64 {
	switch {
	case x < p.at:
		return p.at
	case len(p.layers) == 0:
		return math.Inf(1)
	}
	return p.end
}

// first says whether the plan of x comes before that of y by the ids of its stops.
func (a *labels) first(x, y int32) bool {
	better := true
	for x >= 0 && y >= 0 && x != y {
		l, o := &a.all[x], &a.all[y]
		if l.stop != o.stop {
			better = a.id(l.stop) <= a.id(o.stop)
		}
		x, y = l.parent, o.parent
	}
	return better
}

func (a *labels) id(stop int32) string {
	if stop < 0 {
		return ""
	}
	return a.m.p.Stops[stop].ID
}
