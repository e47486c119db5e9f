package planner

import "math"

// This file solves one tank alone, backwards and exactly: the least that the
// rest of the trip costs for this tank, given what is in hand. All other tanks,
// the day limits and the windows are left out, so it is never too much.
//
// Headroom is measured as hand = headroom + perKm·km, so that driving does not
// move it. With a stop at price p,
//
//	before(h) = min( after(h), visit + p·detour + min over g ≥ h − detour of p·(g − h) + after(g) )
//
// where g is what is in hand when the road is reached again.

// A tankBound is the cost to go of one tank. All money in it is reduced by
// worth per unit, see [bounds].
type tankBound struct {
	tank  int
	worth float64
	after []pieces // by number of stops behind: after[i] is from before stop i on
}

// share is the part of a stop's visit that is this tank's to pay.
func newTankBound(m *model, tank int, worth []float64, share func(stop int) float64) *tankBound {
	b := &tankBound{tank: tank, worth: worth[tank], after: make([]pieces, len(m.stops)+1)}
	x := &m.tanks[tank]
	var best, via, both pieces // scratch

	last := x.perKm * m.length
	if x.refill >= 0 && x.end > x.reserve {
		price := x.refill - b.worth
		b.after[len(m.stops)] = pieces{{x.reserve + last, price * (x.end - x.reserve), -price}, {x.end + last, 0, 0}}
	} else {
		b.after[len(m.stops)] = pieces{{x.end + last, 0, 0}}
	}
	for i := len(m.stops) - 1; i >= 0; i-- {
		s, f := &m.stops[i], b.after[i+1]
		b.after[i] = f
		y := s.service(tank)
		if y == nil {
			continue
		}
		price := y.price - b.worth
		if x.waste {
			price = -b.worth
		}
		detour := 2 * s.half * x.perKm
		from := x.perKm*(s.km+s.half) + max(x.reserve, y.spare)
		top := x.cap + x.perKm*(s.km-s.half)
		best = cheapest(best[:0], f, price, from-detour, top)
		visit := share(i)*m.visitCost(s, worth) + y.fixed + price*detour
		via = shifted(via[:0], best, detour, visit, price, from, top+detour)
		both = lower(both[:0], f, via)
		b.after[i] = append(pieces(nil), both...)
	}
	return b
}

// shifted appends visit − price·x + f(x − by) for x from from on; beyond to,
// more in hand is worth nothing.
func shifted(into, f pieces, by, visit, price, from, to float64) pieces {
	for k, l := range f {
		x, end := l.x+by, to
		if k+1 < len(f) {
			end = min(to, f[k+1].x+by)
		}
		if end <= from && end < to || x > to {
			continue
		}
		start := max(x, from)
		into = into.put(start, visit-price*start+l.y+l.slope*(start-x), l.slope-price)
	}
	if n := len(into); n > 0 && to > into[n-1].x {
		l := into[n-1]
		into = into.put(to, l.y+l.slope*(to-l.x), 0)
	}
	return into
}

// service is what the stop offers for the tank; nil if nothing.
func (s *stopModel) service(tank int) *serviceModel {
	for k := range s.serves {
		if s.serves[k].tank == tank {
			return &s.serves[k]
		}
	}
	return nil
}

// from is the least that the tank costs from before stop i on, with what the
// state has in hand and could have bought by then.
func (b *tankBound) from(s *state, i int) float64 {
	return b.togo(i, s.hand[b.tank], s.layers[b.tank])
}

// togo is the least over h of what it costs to have h in hand, and to go on with it.
func (b *tankBound) togo(i int, hand float64, layers []layer) float64 {
	f := b.after[i]
	hand += slack
	k := f.find(hand)
	best := math.Inf(1)
	if k >= 0 {
		best = f[k].y + f[k].slope*(hand-f[k].x)
	}
	paid := 0.0
	x := hand
	for _, l := range layers {
		rate := l.price - b.worth
		end := x + l.amount
		for k+1 < len(f) && f[k+1].x <= end {
			k++
			if y := paid + rate*(f[k].x-x) + f[k].y; y < best {
				best = y
			}
		}
		paid += rate * l.amount
		x = end
		if k >= 0 {
			if y := paid + f[k].y + f[k].slope*(x-f[k].x); y < best {
				best = y
			}
		}
	}
	return best - b.worth*hand
}
