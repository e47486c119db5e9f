package bound

import (
	"math"

	"ullage/planner/internal/model"
)

// This file looks a partial plan up in the tables by nights.

// class is where in the classes before stop i a partial plan with this hand is.
func (b *Nights) class(i int, l *Place, hand []float64) int {
	at := int(l.Row)
	for _, k := range b.moving {
		at += b.stride[k] * b.scales[k].class(i, hand[b.Tanks[k]]-b.scales[k].extra[l.Stop+1])
	}
	return at
}

// Row is the part of the place that does not move with the road. What could
// be bought of the priced tank is left to cost.
func (b *Nights) Row(s *model.State) int {
	at := 0
	for k, t := range b.Tanks {
		if b.scales[k].step > 0 {
			continue
		}
		hand := s.Hand[t]
		if k != b.priced {
			hand += s.Unpaid(t)
		}
		at += b.stride[k] * b.scales[k].class(0, hand)
	}
	return at + b.counted(s.Nights)
}

// Cost is the cost to go from before stop i on, from a place on the route
// there with this hand, given the layers of the priced tank.
func (b *Nights) Cost(i int, l *Place, hand []float64, layers []model.Layer) float64 {
	t := b.after[i]
	r := t.find(l.Reach, l.ReachAt)
	if r < 0 {
		return math.Inf(1)
	}
	class := b.class(i, l, hand)
	if len(layers) == 0 {
		return t.at(class, r)
	}
	return b.withLayers(t, class, r, hand[b.Tanks[b.priced]], layers)
}

// withLayers is the least cost to go from this place in the table, where x of
// the priced tank is in hand, or from a higher class for what it costs, beyond
// its worth, to get there.
func (b *Nights) withLayers(t *nightTable, class, row int, x float64, layers []model.Layer) float64 {
	best := t.at(class, row)
	s, worth := &b.scales[b.priced], b.worth[b.Tanks[b.priced]]
	most, paid, used := x, 0.0, 0.0 // used of the first layer
	for _, y := range layers {
		most += y.Amount
	}
	for c := s.class(0, x) + 1; c < s.n && s.values[c-1] < most-model.Slack; c++ {
		class += b.stride[b.priced]
		for x < s.values[c-1] && len(layers) > 0 {
			amount := model.Lesser(s.values[c-1]-x, layers[0].Amount-used)
			paid += amount * model.Greater(0, layers[0].Price-worth)
			x += amount
			if used += amount; used >= layers[0].Amount {
				layers, used = layers[1:], 0
			}
		}
		best = model.Lesser(best, paid+t.at(class, row))
	}
	return best
}
