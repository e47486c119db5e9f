package planner

// This file decides how much to buy as late as possible. What a priced tank
// holds is a convex function "cost of having x in hand", kept as what is paid
// for and, above it, layers that could have been bought, cheapest first. A
// layer is paid for when use or a check forces it into hand, which is the
// refund form of the greedy for a fixed path (Khuller, Malekian, Mestre, "To
// fill or not to fill: the gas station problem", ACM Transactions on
// Algorithms 7(3), 2011; Lin, Gertsch, Russell, "A linear-time algorithm for
// finding optimal vehicle refueling policies", Operations Research Letters
// 35(3), 2007).

// A layer could have been bought at a price by now. Layers of a tank ascend by price.
type layer struct {
	price, amount float64
	tank          int32
	visit         int32 // which visit of the plan offered it
}

// A state is a trip somewhere between two visits. The headroom of tank t on
// the route at km x is hand[t] − perKm·x, so that driving changes nothing.
type state struct {
	cost   float64
	km     float64 // since the last night, at the last visit
	min    float64 // on the road since the last night, at the last visit
	nights int
	visits int
	hand   []float64
	layers [][]layer // by tank
	paid   []float64 // by visit, for the tank of interest; nil: not wanted
	watch  int32     // the tank of interest
}

func newState(tanks int) *state {
	return &state{hand: make([]float64, tanks), layers: make([][]layer, tanks)}
}

func (s *state) copyFrom(o *state) {
	s.cost, s.km, s.min, s.nights, s.visits = o.cost, o.km, o.min, o.nights, o.visits
	s.paid, s.watch = o.paid, o.watch
	copy(s.hand, o.hand)
	for t := range o.layers {
		s.layers[t] = append(s.layers[t][:0], o.layers[t]...)
	}
}

// unpaid is what could still be bought after the fact.
func (s *state) unpaid(t int) float64 {
	sum := 0.0
	for _, l := range s.layers[t] {
		sum += l.amount
	}
	return sum
}

// hold makes the headroom in hand at km at least want, paying for the
// cheapest layers; false if that is not possible.
func (s *state) hold(t int, perKm, km, want float64) bool {
	need := want + perKm*km - s.hand[t]
	if need <= 0 {
		return true
	}
	ls := s.layers[t]
	n := 0
	for n < len(ls) && need > 0 {
		take := ls[n].amount
		if need < take {
			take = need
		}
		s.cost += take * ls[n].price
		if s.paid != nil && s.watch == int32(t) {
			s.paid[ls[n].visit] += take
		}
		s.hand[t] += take
		need -= take
		ls[n].amount -= take
		if ls[n].amount > 0 {
			break
		}
		n++
	}
	if n > 0 {
		s.layers[t] = append(ls[:0], ls[n:]...)
	}
	return need <= slack
}

// offer puts a layer at the price under the capacity, in place of dearer ones.
// It reports whether there was room for one.
func (s *state) offer(t int, headroom, capacity, price float64) bool {
	ls := s.layers[t]
	n := 0
	room := capacity - headroom
	for n < len(ls) && ls[n].price < price {
		room -= ls[n].amount
		n++
	}
	if room <= slack {
		return false
	}
	s.layers[t] = append(ls[:n], layer{price: price, amount: room, tank: int32(t), visit: int32(s.visits)})
	if price == 0 {
		s.hold(t, 0, 0, s.hand[t]+room)
	}
	return true
}

// spill takes away what is over capacity, the dearest first.
func (s *state) spill(t int, headroom, capacity float64) {
	over := headroom + s.unpaid(t) - capacity
	for n := len(s.layers[t]); over > 0 && n > 0; n-- {
		l := &s.layers[t][n-1]
		if l.amount > over {
			l.amount -= over
			return
		}
		over -= l.amount
		s.layers[t] = s.layers[t][:n-1]
	}
	if over > 0 {
		s.hand[t] -= over
	}
}
