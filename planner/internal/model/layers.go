package model

import "math"

// This file decides how much to buy as late as possible. What a priced tank
// holds is a convex function "cost of having x in hand", kept as what is paid
// for and, above it, layers that could have been bought, cheapest first. A
// layer is paid for when use or a check forces it into hand, which is the
// refund form of the greedy for a fixed path (Khuller, Malekian, Mestre, "To
// fill or not to fill: the gas station problem", ACM Transactions on
// Algorithms 7(3), 2011; Lin, Gertsch, Russell, "A linear-time algorithm for
// finding optimal vehicle refueling policies", Operations Research Letters
// 35(3), 2007).

// A Layer could have been bought at a price by now. Layers of a tank ascend by price.
type Layer struct {
	Price, Amount float64
	Tank          int32
	visit         int32 // which visit of the plan offered it
}

// LayersOf are those of one tank, of the layers of several, tank by tank.
func LayersOf(layers []Layer, tank int) []Layer {
	from := 0
	for from < len(layers) && int(layers[from].Tank) < tank {
		from++
	}
	to := from
	for to < len(layers) && int(layers[to].Tank) == tank {
		to++
	}
	return layers[from:to]
}

// A State is a trip somewhere between two visits. The headroom of tank t on
// the route at km x is hand[t] − perKm·x, so that driving changes nothing.
type State struct {
	Cost   float64
	Km     float64 // since the last night, at the last visit
	Min    float64 // on the road since the last night, at the last visit
	Nights int
	Slept  float64 // km of the last night; −Inf before the first
	Lists  uint32  // bit k: of the k-th list a stop is visited
	Visits int
	Hand   []float64
	Layers [][]Layer // by tank
	Paid   []float64 // by visit, for the tank of interest; nil: not wanted
	Watch  int32     // the tank of interest
}

func NewState(tanks int) *State {
	return &State{Slept: math.Inf(-1), Hand: make([]float64, tanks), Layers: make([][]Layer, tanks)}
}

func (s *State) CopyFrom(o *State) {
	s.Cost, s.Km, s.Min, s.Nights, s.Visits = o.Cost, o.Km, o.Min, o.Nights, o.Visits
	s.Slept, s.Lists = o.Slept, o.Lists
	s.Paid, s.Watch = o.Paid, o.Watch
	copy(s.Hand, o.Hand)
	for t := range o.Layers {
		s.Layers[t] = append(s.Layers[t][:0], o.Layers[t]...)
	}
}

// Unpaid is what could still be bought after the fact.
func (s *State) Unpaid(t int) float64 {
	sum := 0.0
	for _, l := range s.Layers[t] {
		sum += l.Amount
	}
	return sum
}

// hold makes the headroom in hand at km at least want, paying for the
// cheapest layers; false if that is not possible.
func (s *State) hold(t int, perKm, km, want float64) bool {
	need := want + perKm*km - s.Hand[t]
	if need <= 0 {
		return true
	}
	ls := s.Layers[t]
	n := 0
	for n < len(ls) && need > 0 {
		take := ls[n].Amount
		if need < take {
			take = need
		}
		s.Cost += take * ls[n].Price
		if s.Paid != nil && s.Watch == int32(t) {
			s.Paid[ls[n].visit] += take
		}
		s.Hand[t] += take
		need -= take
		ls[n].Amount -= take
		if ls[n].Amount > 0 {
			break
		}
		n++
	}
	if n > 0 {
		s.Layers[t] = append(ls[:0], ls[n:]...)
	}
	return need <= Slack
}

// offer puts a layer at the price under the capacity, in place of dearer ones.
// It reports whether there was room for one.
func (s *State) offer(t int, headroom, capacity, price float64) bool {
	ls := s.Layers[t]
	n := 0
	room := capacity - headroom
	for n < len(ls) && ls[n].Price < price {
		room -= ls[n].Amount
		n++
	}
	if room <= Slack {
		return false
	}
	s.Layers[t] = append(ls[:n], Layer{Price: price, Amount: room, Tank: int32(t), visit: int32(s.Visits)})
	if price == 0 {
		s.hold(t, 0, 0, s.Hand[t]+room)
	}
	return true
}

// spill takes away what is over capacity, the dearest first.
func (s *State) spill(t int, headroom, capacity float64) {
	over := headroom + s.Unpaid(t) - capacity
	for n := len(s.Layers[t]); over > 0 && n > 0; n-- {
		l := &s.Layers[t][n-1]
		if l.Amount > over {
			l.Amount -= over
			return
		}
		over -= l.Amount
		s.Layers[t] = s.Layers[t][:n-1]
	}
	if over > 0 {
		s.Hand[t] -= over
	}
}
