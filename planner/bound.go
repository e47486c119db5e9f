package planner

import (
	"math"
	"slices"
)

// This file adds up the bound on the rest of a trip. The tanks are divided
// into groups that are solved apart: the tanks that only nights use together
// with the nights, and every tank that driving uses alone. Tanks that driving
// restores are in no group.
//
// Each group pays for its own visits. Where a stop serves several groups the
// cost of the visit is divided among them, so that the sum is never too much
// (bound_share.go).
//
// Each tank has a worth per unit, at most its cheapest price. What is bought
// in all must cover what is used in all, so cost ≥ Σ (price − worth)·amount +
// worth·(use + wanted at the end − in hand): groups see prices less the worth,
// and every visit is charged for the use of its detour, by whichever group it
// belongs to. (A Lagrangian multiplier on the balance of the tank, see
// Geoffrion, "Lagrangean relaxation for integer programming", Mathematical
// Programming Study 2, 1974. Any worth from 0 on is valid.)

type bounds struct {
	m      *model
	worth  []float64 // by tank
	nights *nightsBound
	tanks  []*tankBound
	alone  []int     // tanks with a worth in the nights' group
	shares []float64 // of visits, by stop, that the nights' group pays
}

// A recipe says which bounds to make.
type recipe struct {
	worth   []float64 // by tank
	tanks   []int     // in the nights' group
	nights  tally
	detail  detail
	stopped func() bool // says that bounds are no more wanted; nil: never
}

// newBounds are nil if they are stopped before they are done.
func newBounds(m *model, r recipe) *bounds {
	worth, atNight := r.worth, r.tanks
	b := &bounds{m: m, worth: worth}
	single := m.singleTanks()
	shares := m.newShares(worth, atNight, single)
	for k, t := range single {
		b.tanks = append(b.tanks, newTankBound(m, t, worth, shares.of[k+1], shares.gives(k+1)))
	}
	b.shares = shares.of[0]
	if b.nights = newNightsBound(m, r, b.shares, new(store[float64])); b.nights == nil {
		return nil
	}
	for t := range m.tanks {
		isSingle := false
		for _, u := range single {
			isSingle = isSingle || u == t
		}
		if !isSingle && worth[t] > 0 {
			b.alone = append(b.alone, t)
		}
	}
	return b
}

// pricedTank is the tank of the nights' group whose layers are weighed, −1 if none.
func (b *bounds) pricedTank() int {
	if b.nights.priced < 0 {
		return -1
	}
	return b.nights.tanks[b.nights.priced]
}

// singleTanks are the tanks that are solved alone, the one whose use costs most first.
func (m *model) singleTanks() []int {
	var out []int
	for t := range m.tanks {
		if m.tanks[t].perKm < 0 || m.restores(t) {
			continue
		}
		if m.tanks[t].perKm > 0 || !m.usedAtNight(t) {
			out = append(out, t)
		}
	}
	if k := slices.Index(out, m.mainTank(out)); k > 0 {
		out[0], out[k] = out[k], out[0]
	}
	return out
}

func (m *model) usedAtNight(t int) bool {
	for i := range m.stops {
		if s := &m.stops[i]; s.night && s.use[t] != 0 {
			return true
		}
	}
	return false
}

// restores says whether some night restores the tank.
func (m *model) restores(t int) bool {
	for i := range m.stops {
		if s := &m.stops[i]; s.night && s.use[t] < 0 {
			return true
		}
	}
	return false
}

// mainTank is the tank whose use costs most on the whole route.
func (m *model) mainTank(single []int) int {
	best, most := -1, -1.0
	for _, t := range single {
		if w := m.cheapestPrice(t) * m.tanks[t].perKm; w > most {
			best, most = t, w
		}
	}
	return best
}

// cheapestPrice of a unit of the tank, refill at the end included; 0 if none is sold.
func (m *model) cheapestPrice(t int) float64 {
	price := math.Inf(1)
	for i := range m.stops {
		if y := m.stops[i].service(t); y != nil {
			price = min(price, y.price)
		}
	}
	if r := m.tanks[t].refill; r >= 0 {
		price = min(price, r)
	}
	if math.IsInf(price, 1) {
		return 0
	}
	return price
}

// visitCost is what any visit of the stop costs, with the worth of what the detour uses.
func (m *model) visitCost(s *stopModel, worth []float64) float64 {
	c := s.fixed
	for t, w := range worth {
		c += w * 2 * s.half * m.tanks[t].perKm
	}
	return c
}

// worths are the multipliers: the cheapest price of tanks that must be bought
// for, 0 for others.
func (m *model) worths() []float64 {
	w := make([]float64, len(m.tanks))
	for t := range m.tanks {
		x := &m.tanks[t]
		if x.free || x.perKm < 0 || m.restores(t) {
			continue
		}
		if x.end-x.start+x.perKm*m.length > 0 {
			w[t] = m.cheapestPrice(t)
		}
	}
	return w
}

// constant is worth·(wanted at the end + use of the route), the part of the
// bound that does not depend on the state.
func (b *bounds) constant() float64 {
	c := 0.0
	for t, w := range b.worth {
		c += w * (b.m.tanks[t].end + b.m.tanks[t].perKm*b.m.length)
	}
	return c
}
