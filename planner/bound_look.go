package planner

import "math"

// This file looks a partial plan up in the tables by nights.

// place is where in the rows before stop i a label with this hand is.
func (b *nightsBound) place(i int, l *label, hand []float64) int {
	at := int(l.row)
	for _, k := range b.moving {
		at += b.stride[k] * b.scales[k].class(i, hand[b.tanks[k]]-b.scales[k].extra[l.stop+1])
	}
	return at
}

// row is the part of the place that does not move with the road. What could
// be bought of the priced tank is left to cost.
func (b *nightsBound) row(s *state) int {
	at := 0
	for k, t := range b.tanks {
		if b.scales[k].step > 0 {
			continue
		}
		hand := s.hand[t]
		if k != b.priced {
			hand += s.unpaid(t)
		}
		at += b.stride[k] * b.scales[k].class(0, hand)
	}
	return at + b.counted(s.nights)
}

// counted is where in the rows these nights so far are.
func (b *nightsBound) counted(nights int) int {
	if b.counts == 1 {
		return 0
	}
	return min(nights, b.counts-1) * (b.size / b.counts)
}

// cost is the cost to go from before stop i on, of a label that is on the
// route there, given the layers of the priced tank.
func (b *nightsBound) cost(i int, l *label, hand []float64, layers []layer) float64 {
	t := b.after[i]
	r := t.find(l.reach, l.reachAt)
	if r < 0 {
		return math.Inf(1)
	}
	class := b.place(i, l, hand)
	if len(layers) == 0 {
		return t.at(class, r)
	}
	return b.withLayers(t, class, r, hand[b.tanks[b.priced]], layers)
}

// withLayers is the least cost to go from this place in the table, where x of
// the priced tank is in hand, or from a higher class for what it costs, beyond
// its worth, to get there.
func (b *nightsBound) withLayers(t *nightTable, class, row int, x float64, layers []layer) float64 {
	best := t.at(class, row)
	s, worth := &b.scales[b.priced], b.worth[b.tanks[b.priced]]
	most, paid, used := x, 0.0, 0.0 // used of the first layer
	for _, y := range layers {
		most += y.amount
	}
	for c := s.class(0, x) + 1; c < s.n && s.values[c-1] < most-slack; c++ {
		class += b.stride[b.priced]
		for x < s.values[c-1] && len(layers) > 0 {
			amount := lesser(s.values[c-1]-x, layers[0].amount-used)
			paid += amount * greater(0, layers[0].price-worth)
			x += amount
			if used += amount; used >= layers[0].amount {
				layers, used = layers[1:], 0
			}
		}
		best = lesser(best, paid+t.at(class, row))
	}
	return best
}

// find is the last row in reach, −1 if none is.
func (t *nightTable) find(km, at float64) int {
	lo, hi := 0, len(t.reach)
	for lo < hi {
		mid := (lo + hi) / 2
		if t.reach[mid] <= km+slack && t.reachAt[mid] <= at+slack {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return lo - 1
}
