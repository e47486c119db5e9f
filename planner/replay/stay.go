package replay

import (
	"math"
	"slices"

	"ullage/planner"
)

// This file replays the inside of a stay, and what is let out before driving off.

// arriveForNight checks in: time before that is in hand, which is neither a cost nor
// on the road.
func (r *replayer) arriveForNight(s *planner.Stop) (inHand float64, err error) {
	d, n := r.p.Drive, s.Night
	if onRoad := r.dayMin + s.StopMin; onRoad > d.MaxMinPerDay+planner.Tolerance {
		return 0, &planner.Broken{Rule: planner.RuleDayMin, Stop: s.ID, Km: s.Km, Have: onRoad, Need: d.MaxMinPerDay}
	}
	if r.nights > 0 && s.Km-r.slept < d.MoveKm-planner.Tolerance {
		return 0, &planner.Broken{Rule: planner.RuleMove, Stop: s.ID, Km: s.Km, Have: s.Km - r.slept, Need: d.MoveKm}
	}
	in := checkIn(s, r.clock)
	if math.IsInf(in, 1) {
		return 0, shut(s, r.clock)
	}
	inHand = in - r.clock
	latest := 1440 * float64(n.Nights)
	if n.CheckIn != nil {
		latest = 1440
	}
	if r.dayMin+inHand+s.StopMin > latest+planner.Tolerance {
		return 0, &planner.Broken{Rule: planner.RuleNight, Stop: s.ID, Km: s.Km, Detail: planner.NightTooShort}
	}
	return inHand, nil
}

// stay lives the nights: services happen at any time in them, so only what
// is left when it is over counts.
func (r *replayer) stay(s *planner.Stop, serve []planner.Serve) error {
	d, n := r.p.Drive, s.Night
	for i, y := range serve {
		x := serviceOf(s, y.Tank)
		acts, ok := n.Acts(r.p.Tanks[r.tankAt[y.Tank]])
		if !ok {
			return &planner.Broken{Rule: planner.RuleNight, Stop: s.ID, Tank: y.Tank, Km: s.Km, Detail: planner.NightTooMuch}
		}
		r.charge(float64(acts) * x.Min)
		r.parts.Fees += float64(acts) * x.Fee
		if err := r.restore(s, x, &serve[i], n.Use[y.Tank]); err != nil {
			return err
		}
	}
	for i, t := range r.p.Tanks {
		if !slices.ContainsFunc(serve, func(y planner.Serve) bool { return y.Tank == t.ID }) {
			r.headroom[i] = min(r.headroom[i]-n.Use[t.ID], t.Capacity)
		}
	}
	r.nights += n.Nights
	if d.Rests(r.nights) {
		return &planner.Broken{Rule: planner.RuleRest, Stop: s.ID, Km: s.Km, Have: float64(r.nights + 1)}
	}
	r.clock, r.dayKm, r.dayMin, r.slept = d.DepartMin+1440*float64(r.nights), 0, 0, s.Km
	r.parts.Nights += n.Fee
	r.charge(n.Min)
	return r.keepsReserve(s.ID)
}

// lighten lets out of its supply tank what is too heavy for driving on, or fills it less.
func (r *replayer) lighten(s *planner.Stop, done *planner.Visit, stated float64) error {
	id := r.p.Mass.Supply(r.p.Tanks)
	if id == "" && stated != 0 {
		return &planner.Broken{Rule: planner.RuleDrain, Stop: s.ID, Km: s.Km, Have: stated}
	}
	over := r.heavy()
	if over <= planner.Tolerance && stated == 0 {
		return nil
	}
	broken := &planner.Broken{Rule: planner.RuleMass, Stop: s.ID, Km: s.Km, Have: r.p.Mass.Most + over, Need: r.p.Mass.Most}
	if id == "" {
		return broken
	}
	i := r.tankAt[id]
	out := max(0, over/r.p.Mass.Per[id])
	k := slices.IndexFunc(done.Serve, func(y planner.Serve) bool { return y.Tank == id })
	if r.drain && k >= 0 {
		less := min(out, done.Serve[k].Amount)
		done.Serve[k].Amount -= less
		r.headroom[i] -= less
		if out -= less; done.Serve[k].Amount <= planner.Tolerance {
			done.Serve, k = slices.Delete(done.Serve, k, k+1), -1
		}
	}
	if r.drain {
		stated = out
	}
	if k >= 0 && out > planner.Tolerance {
		return broken
	}
	if math.Abs(stated-out) > planner.Tolerance {
		return &planner.Broken{Rule: planner.RuleDrain, Stop: s.ID, Tank: id, Km: s.Km, Have: stated, Need: out}
	}
	done.Drain = stated
	r.headroom[i] -= stated
	return r.keepsReserve(s.ID)
}

// heavy is how much too heavy the tanks are now.
func (r *replayer) heavy() float64 {
	if r.p.Mass == nil {
		return 0
	}
	return r.p.Mass.Of(r.p.Tanks, func(i int) float64 { return r.p.Tanks[i].Swap(r.headroom[i]) }) - r.p.Mass.Most
}

// acts says when in a stay a tank is served: before it would not last the next
// night, as much as there is room for, and before leaving.
func (r *replayer) acts(s *planner.Stop, done planner.Visit) error {
	for k := range done.Serve {
		y := &done.Serve[k]
		t := r.p.Tanks[r.tankAt[y.Tank]]
		a := actor{t: t, have: t.Swap(done.Arrive.Levels[t.ID]), rest: y.Amount}
		for i, use := range s.Night.Uses(t.ID) {
			a.night(i, use)
		}
		a.act(s.Night.Nights, a.most())
		y.Acts = a.acts
	}
	return nil
}

// An actor serves one tank through a stay.
type actor struct {
	t    planner.Tank
	have float64 // headroom
	rest float64 // of the amount
	acts []planner.Act
}

// most that one act can move now.
func (a *actor) most() float64 {
	room := a.t.Capacity - a.have
	if a.t.Kind == planner.Waste {
		return room
	}
	return min(room, a.rest)
}

func (a *actor) act(night int, amount float64) {
	if amount <= planner.Tolerance {
		return
	}
	a.acts = append(a.acts, planner.Act{Night: night, Amount: amount, From: a.t.Swap(a.have)})
	a.have, a.rest = a.have+amount, a.rest-amount
}

// night lives one night that uses so much.
func (a *actor) night(slept int, use float64) {
	for first := true; use > a.have-a.t.Reserve+planner.Tolerance; first = false {
		if !first {
			use -= a.have - a.t.Reserve
			a.have = a.t.Reserve
		}
		before := len(a.acts)
		if a.act(slept, a.most()); len(a.acts) == before && !first {
			break
		}
	}
	a.have = min(a.have-use, a.t.Capacity)
}
