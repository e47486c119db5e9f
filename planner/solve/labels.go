package solve

import (
	"math"

	"ullage/planner/internal/bound"
	"ullage/planner/internal/model"
)

// This file keeps the partial plans of a search. Labels and dominance are as
// in Irnich and Desaulniers, "Shortest path problems with resource
// constraints", in: Column Generation, Springer, 2005.

// A label is a partial plan that ends with the visit of a stop.
type label struct {
	cost        float64
	km, min     float64 // since the last night, back on the route
	bound       float64 // of any plan that goes on from here
	bound.Place         // after the stop visited last
	model.Deed          // what was done there
	slept       float64 // km of the last night
	lists       uint32  // of which a stop is visited
	parent      int32
	visits      int32
	layersAt    int32
	layersTo    int32
	tankCost    float64 // bounds of single tanks
}

type labels struct {
	m      *model.Model
	all    []label
	hand   []float64 // tanks per label
	layers []model.Layer
}

// add keeps a state as a label, whose other fields are given.
func (a *labels) add(l label, s *model.State) int32 {
	id := int32(len(a.all))
	l.layersAt = int32(len(a.layers))
	for _, ls := range s.Layers {
		a.layers = append(a.layers, ls...)
	}
	l.layersTo = int32(len(a.layers))
	a.hand = append(a.hand, s.Hand...)
	a.all = append(a.all, l)
	return id
}

func (a *labels) handOf(id int32) []float64 {
	n := len(a.m.Tanks)
	return a.hand[int(id)*n : (int(id)+1)*n]
}

// load makes s the state of a label.
func (a *labels) load(s *model.State, id int32) {
	l := &a.all[id]
	s.Cost, s.Km, s.Min, s.Nights, s.Visits = l.cost, l.km, l.min, int(l.Nights), int(l.visits)
	s.Slept, s.Lists = l.slept, l.lists
	copy(s.Hand, a.handOf(id))
	for t := range s.Layers {
		s.Layers[t] = s.Layers[t][:0]
	}
	for _, y := range a.layers[l.layersAt:l.layersTo] {
		s.Layers[y.Tank] = append(s.Layers[y.Tank], y)
	}
}

// layersAll are the layers of all tanks, tank by tank.
func (a *labels) layersAll(id int32) []model.Layer {
	l := &a.all[id]
	return a.layers[l.layersAt:l.layersTo]
}

// layersOf are the layers of a tank.
func (a *labels) layersOf(id int32, tank int) []model.Layer {
	return model.LayersOf(a.layersAll(id), tank)
}

// A look is what of a label rules out most dominance at a glance, at one stop.
type look struct {
	cost, reach        float64
	free               [4]float32 // in hand of the first tanks that are free and that driving does not restore
	restored           float32    // of the first free one that it does restore
	nights, least, few int32      // nights so far; another label needs as many as least, and not more than few
	slept              float64    // km of the last night, −Inf where it is far enough behind for the next
	lists              uint32
}

// look at a label before stop i, at km.
func (a *labels) look(id int32, i int, km float64) look {
	m, l := a.m, &a.all[id]
	k := look{cost: l.cost, reach: l.Reach, nights: l.Nights, least: min(l.Nights, int32(m.Least)), few: math.MaxInt32}
	if k.lists = l.lists; l.slept > km-m.MoveKm+model.Slack {
		k.slept = l.slept
	} else {
		k.slept = math.Inf(-1)
	}
	if m.Opens[i] || m.Rests() {
		k.least, k.few = l.Nights, l.Nights
	} else if m.Most < math.MaxInt32 {
		k.few = l.Nights
	}
	hand := a.handOf(id)
	for n, t := range m.Plain {
		k.free[n] = float32(hand[t])
	}
	if t := m.Restored; t >= 0 {
		k.restored = float32(model.Lesser(m.Tanks[t].Cap, hand[t]-m.Tanks[t].PerKm*km))
	}
	return k
}

// covers says whether label k may dominate o; false is certain.
func (k *look) covers(o *look) bool {
	const rounding = 1e-2
	return k.cost <= o.cost+model.Tie && k.nights >= o.least && k.nights <= o.few && k.reach >= o.reach-model.Slack &&
		k.slept <= o.slept+model.Slack && k.lists&o.lists == o.lists &&
		k.free[0] >= o.free[0]-rounding && k.free[1] >= o.free[1]-rounding &&
		k.free[2] >= o.free[2]-rounding && k.free[3] >= o.free[3]-rounding && k.restored >= o.restored-rounding
}

// dominates says whether whatever label y can do, label x can do as well
// before or at stop i, and not at a higher cost, given that the look of x there
// covers that of y: that cost, kilometres and nights allow it is said by then.
func (a *labels) dominates(x, y int32, i int, km float64) bool {
	m, l, o := a.m, &a.all[x], &a.all[y]
	gain := o.cost - l.cost
	if l.ReachAt < o.ReachAt-model.Slack {
		return false
	}
	if m.Opens[i] && l.ReachAt > o.ReachAt { // what is saved now may be lost to waiting
		if gain -= m.Money * (l.ReachAt - o.ReachAt); gain < -model.Tie {
			return false
		}
	}
	hx, hy := a.handOf(x), a.handOf(y)
	for t := range m.Tanks {
		if !m.Tanks[t].Free {
			continue
		}
		have, want := hx[t], hy[t]
		if k := &m.Tanks[t]; k.PerKm < 0 {
			have, want = model.Lesser(k.Cap, have-k.PerKm*km), model.Lesser(k.Cap, want-k.PerKm*km)
		}
		if have < want-model.Slack {
			return false
		}
	}
	for t := range m.Tanks {
		if m.Tanks[t].Free {
			continue
		}
		floor := math.Inf(-1)
		if k := &m.Tanks[t]; k.PerKm >= 0 {
			floor = k.Reserve + k.PerKm*km
		}
		gain -= dearest(hx[t], a.layersOf(x, t), hy[t], a.layersOf(y, t), floor)
		if gain < -model.Tie {
			return false
		}
	}
	return gain > model.Tie || a.first(x, y)
}

// dearest is the most that having x in hand costs more with the one purse than
// with the other, over all x from floor on that the other can have.
func dearest(hand float64, layers []model.Layer, other float64, others []model.Layer, floor float64) float64 {
	most := other
	for _, l := range others {
		most += l.Amount
	}
	total := hand
	for _, l := range layers {
		total += l.Amount
	}
	if total < most-model.Slack {
		return math.Inf(1)
	}
	x := model.Greater(floor, model.Lesser(hand, other))
	p, q := newPurse(hand, layers), newPurse(other, others)
	diff := p.pay(x) - q.pay(x)
	worst := diff
	for x < most {
		x = model.Lesser(model.Lesser(p.next(x), q.next(x)), most)
		diff += p.pay(x) - q.pay(x)
		worst = model.Greater(worst, diff)
	}
	return worst
}

// A purse walks up the cost of having more in hand.
type purse struct {
	at     float64 // in hand
	layers []model.Layer
	end    float64 // in hand when the first layer is used up
}

func newPurse(hand float64, layers []model.Layer) purse {
	p := purse{at: hand, layers: layers}
	p.settle()
	return p
}

// settle drops layers that make no difference to what is in hand, and finds
// the end of the first other one.
func (p *purse) settle() {
	for len(p.layers) > 0 {
		p.end = p.at + p.layers[0].Amount
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
		cost += (p.end - p.at) * p.layers[0].Price
		p.at, p.layers = p.end, p.layers[1:]
		p.settle()
	}
	if len(p.layers) > 0 && x > p.at {
		cost += (x - p.at) * p.layers[0].Price
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
		if l.Stop != o.Stop {
			better = a.id(l.Stop) <= a.id(o.Stop)
		}
		x, y = l.parent, o.parent
	}
	return better
}

func (a *labels) id(stop int32) string {
	if stop < 0 {
		return ""
	}
	return a.m.Problem.Stops[stop].ID
}

// drop takes back the label added last.
func (a *labels) drop(id int32) {
	a.layers = a.layers[:a.all[id].layersAt]
	a.hand = a.hand[:int(id)*len(a.m.Tanks)]
	a.all = a.all[:id]
}

// keep drops all labels but these and those that they come from, and gives those
// kept new numbers, also in ids.
func (a *labels) keep(ids []int32) {
	to := make([]int32, len(a.all)) // 0: dropped
	for _, id := range ids {
		to[id] = 1
	}
	for id := len(to) - 1; id >= 0; id-- {
		if p := a.all[id].parent; to[id] > 0 && p >= 0 {
			to[p] = 1
		}
	}
	kept, hand, layers := a.all[:0], a.hand[:0], a.layers[:0]
	for id := range to {
		if to[id] == 0 {
			continue
		}
		to[id] = int32(len(kept))
		l := a.all[id]
		if l.parent >= 0 {
			l.parent = to[l.parent]
		}
		own, has := a.layers[l.layersAt:l.layersTo], a.handOf(int32(id))
		l.layersAt = int32(len(layers))
		layers, hand = append(layers, own...), append(hand, has...)
		l.layersTo = int32(len(layers))
		kept = append(kept, l)
	}
	a.all, a.hand, a.layers = kept, hand, layers
	for k, id := range ids {
		ids[k] = to[id]
	}
}
