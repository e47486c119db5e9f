package bound

import (
	"math"

	"ullage/planner/internal/model"
)

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

// A Tank is the cost to go of one tank. All money in it is reduced by
// worth per unit, see [Bounds].
type Tank struct {
	Tank   int
	worth  float64
	shares []float64 // of visits, by stop
	after  []pieces  // by number of stops behind: after[i] is from before stop i on
}

// All tables of a tank keep so many pieces, and at least so many a stop.
const mostPieces, leastPieces = 2_000_000, 32

func piecesOf(stops int) int { return max(mostPieces/(stops+1), leastPieces) }

// pollEvery so many stops of a single tank it is asked whether to stop.
const pollEvery = 64

// newTankBound, with the shares of visits that the tank pays. gives, if not nil,
// is told how much less the share of a stop could be with the bound of the
// whole trip as it is, and says how much less it shall be.
//
// nil if stopped says so before it is done.
func newTank(m *model.Model, tank int, worth, shares []float64, gives func(stop int, spare float64) float64, stopped func() bool) *Tank {
	b := &Tank{Tank: tank, worth: worth[tank], shares: shares, after: make([]pieces, len(m.Stops)+1)}
	b.after[len(m.Stops)] = atEnd(m, tank, b.worth)
	var before []pieces
	root := 0.0
	if gives != nil {
		if before = costsBefore(m, tank, b.worth, shares, stopped); before == nil {
			return nil
		}
		root = meet(before[len(m.Stops)], b.after[len(m.Stops)])
	}
	var store store[piece]
	w := walk{most: piecesOf(len(m.Stops))}
	for i := len(m.Stops) - 1; i >= 0; i-- {
		if i%pollEvery == 0 && stopped() {
			return nil
		}
		f := b.after[i+1]
		b.after[i] = f
		y := m.Stops[i].Service(tank)
		if y == nil {
			continue
		}
		via := w.through(newCall(m, i, y, b.worth), f, shares[i])
		if gives != nil && shares[i] > 0 {
			if spare := min(meet(before[i], via)-root, shares[i]); spare > 0 {
				less := gives(i, spare)
				shares[i] -= less
				for k := range via {
					via[k].y -= less
				}
			}
		}
		b.after[i] = store.keep(w.lower(f, via))
	}
	return b
}

// Extra is, by stop, what the tank costs at least more than in the best case if it
// is served there; nil if stopped says so before it is known.
func (b *Tank) Extra(m *model.Model, stopped func() bool) []float64 {
	before := costsBefore(m, b.Tank, b.worth, b.shares, stopped)
	if before == nil {
		return nil
	}
	root := b.after[0].at(m.Tanks[b.Tank].Start + model.Slack) // as ToGo has it
	out := make([]float64, len(m.Stops))
	if math.IsInf(root, 1) {
		return out
	}
	w := walk{most: piecesOf(len(m.Stops))}
	for i := range m.Stops {
		if i%pollEvery == 0 && stopped() {
			return nil
		}
		if y := m.Stops[i].Service(b.Tank); y != nil {
			via := w.through(newCall(m, i, y, b.worth), b.after[i+1], b.shares[i])
			out[i] = model.Greater(0, meet(before[i], via)-root)
		}
	}
	return out
}

// costsBefore is the same seen from the other end: by stop, the least that it costs
// to come there with −x in hand.
// nil if stopped.
func costsBefore(m *model.Model, tank int, worth float64, shares []float64, stopped func() bool) []pieces {
	out := make([]pieces, len(m.Stops)+1)
	out[0] = pieces{{-m.Tanks[tank].Start, 0, 0}}
	var store store[piece]
	w := walk{most: piecesOf(len(m.Stops))}
	for i := range m.Stops {
		if i%pollEvery == 0 && stopped() {
			return nil
		}
		f := out[i]
		out[i+1] = f
		y := m.Stops[i].Service(tank)
		if y == nil {
			continue
		}
		c := newCall(m, i, y, worth)
		c.from, c.to = -c.to, -c.from
		out[i+1] = store.keep(w.lower(f, w.through(c, f, shares[i])))
	}
	return out
}

// A call is the visit of a stop for one tank.
type call struct {
	price  float64 // less the worth
	detour float64 // what the detour uses
	from   float64 // in hand on arrival, at least
	to     float64 // in hand when the road is reached again, at most
	fixed  float64 // money for the service and for what the detour uses
}

func newCall(m *model.Model, i int, y *model.Service, worth float64) call {
	x, s := &m.Tanks[y.Tank], &m.Stops[i]
	c := call{price: y.Price - worth, detour: 2 * s.Half * x.PerKm}
	if x.Waste {
		c.price = -worth
	}
	c.from = x.PerKm*(s.Km+s.Half) + model.Greater(x.Reserve, y.Spare)
	c.to = x.Cap + x.PerKm*(s.Km-s.Half) + model.Slack // a full tank may be just enough
	c.fixed = y.Fixed + c.price*c.detour
	return c
}

// A walk has room for the pieces of one stop, until the next.
type walk struct {
	best, via, both pieces
	most            int // pieces that are kept
}

// through is what it costs to make the call, for this share of the visit, and to go on with f.
func (w *walk) through(c call, f pieces, share float64) pieces {
	w.best = cheapest(w.best[:0], f, c.price, c.from-c.detour, c.to)
	w.via = shifted(w.via[:0], w.best, c.detour, share+c.fixed, c.price, c.from, c.to+c.detour)
	return w.via
}

func (w *walk) lower(f, g pieces) pieces {
	w.both = lower(w.both[:0], f, g).fewer(w.most)
	return w.both
}

// atEnd is what is still to pay at the end of the trip, by what is in hand.
func atEnd(m *model.Model, tank int, worth float64) pieces {
	x := &m.Tanks[tank]
	last := x.PerKm * m.Length
	if x.Refill < 0 || x.End <= x.Reserve {
		return pieces{{x.End + last, 0, 0}}
	}
	price := x.Refill - worth
	return pieces{{x.Reserve + last, price * (x.End - x.Reserve), -price}, {x.End + last, 0, 0}}
}

// shifted appends visit − price·x + f(x − by) for x from from on; beyond to,
// more in hand is worth nothing.
func shifted(into, f pieces, by, visit, price, from, to float64) pieces {
	for k, l := range f {
		x, end := l.x+by, to
		if k+1 < len(f) {
			end = model.Lesser(to, f[k+1].x+by)
		}
		if end <= from && end < to || x > to {
			continue
		}
		start := model.Greater(x, from)
		into = into.put(start, visit-price*start+l.y+l.slope*(start-x), l.slope-price)
	}
	if n := len(into); n > 0 && to > into[n-1].x {
		l := into[n-1]
		into = into.put(to, l.y+l.slope*(to-l.x), 0)
	}
	return into
}

// From is the least that the tank costs from before stop i on, with what the
// state has in hand and could have bought by then.
func (b *Tank) From(s *model.State, i int) float64 {
	return b.ToGo(i, s.Hand[b.Tank], s.Layers[b.Tank])
}

// ToGo is the least over h of what it costs to have h in hand, and to go on with it.
func (b *Tank) ToGo(i int, hand float64, layers []model.Layer) float64 {
	f := b.after[i]
	hand += model.Slack
	k := f.find(hand)
	best := math.Inf(1)
	if k >= 0 {
		best = f[k].y + f[k].slope*(hand-f[k].x)
	}
	paid := 0.0
	x := hand
	for _, l := range layers {
		rate := l.Price - b.worth
		end := x + l.Amount
		for k+1 < len(f) && f[k+1].x <= end {
			k++
			if y := paid + rate*(f[k].x-x) + f[k].y; y < best {
				best = y
			}
		}
		paid += rate * l.Amount
		x = end
		if k >= 0 {
			if y := paid + f[k].y + f[k].slope*(x-f[k].x); y < best {
				best = y
			}
		}
	}
	return best - b.worth*hand
}
