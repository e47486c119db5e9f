package bound

import "ullage/planner/internal/model"

// This file adds up the bound on the rest of a trip. The tanks are divided
// into groups that are solved apart: the tanks that only nights use together
// with the nights, and every tank that driving uses alone. Tanks that driving
// restores are in no group.
//
// Each group pays for its own visits. Where a stop serves several groups the
// cost of the visit is divided among them, so that the sum is never too much
// (share.go).
//
// Each tank has a worth per unit, at most its cheapest price. What is bought
// in all must cover what is used in all, so cost ≥ Σ (price − worth)·amount +
// worth·(use + wanted at the end − in hand): groups see prices less the worth,
// and every visit is charged for the use of its detour, by whichever group it
// belongs to. (A Lagrangian multiplier on the balance of the tank, see
// Geoffrion, "Lagrangean relaxation for integer programming", Mathematical
// Programming Study 2, 1974. Any worth from 0 on is valid.)

type Bounds struct {
	m      *model.Model
	Worth  []float64 // by tank
	Nights *Nights
	Tanks  []*Tank
	Alone  []int     // tanks with a worth in the nights' group
	shares []float64 // of visits, by stop, that the nights' group pays
}

// New bounds are nil if they are stopped before they are done.
func New(m *model.Model, r Recipe) *Bounds {
	if r.Stopped == nil {
		r.Stopped = func() bool { return false }
	}
	worth, atNight := r.Worth, r.Tanks
	b := &Bounds{m: m, Worth: worth}
	single := singleTanks(m)
	shares := newShares(m, worth, atNight, single)
	for k, t := range single {
		tank := newTank(m, t, worth, shares.of[k+1], shares.gives(k+1), r.Stopped)
		if tank == nil {
			return nil
		}
		b.Tanks = append(b.Tanks, tank)
	}
	b.shares = shares.of[0]
	if b.Nights = newNights(m, r, b.shares, new(store[float64])); b.Nights == nil {
		return nil
	}
	for t := range m.Tanks {
		isSingle := false
		for _, u := range single {
			isSingle = isSingle || u == t
		}
		if !isSingle && worth[t] > 0 {
			b.Alone = append(b.Alone, t)
		}
	}
	return b
}

// Retally makes the tables by nights anew, by a recipe that differs in nothing
// but the tally; those of before are no more to be used. If it is stopped there
// are none, now and later.
func (b *Bounds) Retally(r Recipe) bool {
	if b.Nights == nil {
		return false
	}
	b.Nights.store.reset()
	b.Nights = newNights(b.m, r, b.shares, b.Nights.store)
	return b.Nights != nil
}

// PricedTank is the tank of the nights' group whose layers are weighed, −1 if none.
func (b *Bounds) PricedTank() int {
	if b.Nights.priced < 0 {
		return -1
	}
	return b.Nights.Tanks[b.Nights.priced]
}

// Constant is worth·(wanted at the end + use of the route), the part of the
// bound that does not depend on the state.
func (b *Bounds) Constant() float64 {
	c := 0.0
	for t, w := range b.Worth {
		c += w * (b.m.Tanks[t].End + b.m.Tanks[t].PerKm*b.m.Length)
	}
	return c
}
