package planner

// This file replays what is done at one stop.

import (
	"math"
	"slices"
)

func (r *replayer) arrive(s *Stop, serve []Serve) error {
	if err := r.keepsReserve(s.ID); err != nil {
		return err
	}
	if r.dayKm > r.p.Drive.MaxKmPerDay+Tolerance {
		return &Broken{Rule: RuleDayKm, Stop: s.ID, Km: s.Km, Have: r.dayKm, Need: r.p.Drive.MaxKmPerDay}
	}
	if !r.p.Backup {
		return nil
	}
	for _, y := range serve {
		if have, need := r.headroom[r.tankAt[y.Tank]], s.service(y.Tank).Spare; have < need-Tolerance {
			return &Broken{Rule: RuleSpare, Stop: s.ID, Tank: y.Tank, Km: s.Km, Have: have, Need: need}
		}
	}
	return nil
}

func (r *replayer) keepsReserve(stop string) error {
	for i, t := range r.p.Tanks {
		if r.headroom[i] < t.Reserve-Tolerance {
			return &Broken{Rule: RuleReserve, Stop: stop, Tank: t.ID, Km: r.km, Have: r.headroom[i], Need: t.Reserve}
		}
	}
	return nil
}

// wait lets time pass until the stop is open.
func (r *replayer) wait(s *Stop) error {
	for _, w := range s.Open {
		if r.clock <= w[1]+Tolerance {
			waiting := max(0, w[0]-r.clock)
			r.spend(waiting)
			r.charge(waiting)
			return nil
		}
	}
	if len(s.Open) == 0 {
		return nil
	}
	return &Broken{Rule: RuleOpen, Stop: s.ID, Km: s.Km, Have: r.clock, Need: s.Open[len(s.Open)-1][1]}
}

// serve takes the services of a stop that is left on the same day.
func (r *replayer) serve(s *Stop, serve []Serve) error {
	for i, y := range serve {
		x := s.service(y.Tank)
		if err := r.restore(s, x, &serve[i], 0); err != nil {
			return err
		}
		r.spend(x.Min)
	}
	return nil
}

// stay takes the night: services happen at any time during it, so only what
// is left when it is over counts.
func (r *replayer) stay(s *Stop, serve []Serve) error {
	d, n := r.p.Drive, s.Night
	if r.dayMin > d.MaxMinPerDay+Tolerance {
		return &Broken{Rule: RuleDayMin, Stop: s.ID, Km: s.Km, Have: r.dayMin, Need: d.MaxMinPerDay}
	}
	if r.dayMin > 1440*float64(n.Nights)+Tolerance {
		return &Broken{Rule: RuleNight, Stop: s.ID, Km: s.Km, Detail: "the next departure is earlier than the arrival"}
	}
	for i, y := range serve {
		if err := r.restore(s, s.service(y.Tank), &serve[i], n.Use[y.Tank]); err != nil {
			return err
		}
	}
	for i, t := range r.p.Tanks {
		if !slices.ContainsFunc(serve, func(y Serve) bool { return y.Tank == t.ID }) {
			r.headroom[i] = min(r.headroom[i]-n.Use[t.ID], t.Capacity)
		}
	}
	r.nights += n.Nights
	r.clock, r.dayKm, r.dayMin = d.DepartMin+1440*float64(r.nights), 0, 0
	r.parts.Nights += n.Fee
	return r.keepsReserve(s.ID)
}

// restore takes one service, with use headroom going while it is taken.
func (r *replayer) restore(s *Stop, x *Service, y *Serve, use float64) error {
	i := r.tankAt[x.Tank]
	t := r.p.Tanks[i]
	r.charge(x.Min)
	r.parts.Fees += x.Fee
	after := r.headroom[i] - use
	if t.Kind == Waste {
		out := t.Capacity - min(after, t.Capacity)
		if r.drain {
			y.Amount = out
		}
		if !(math.Abs(y.Amount-out) <= Tolerance) {
			return &Broken{Rule: RuleAmount, Stop: s.ID, Tank: t.ID, Km: s.Km, Have: y.Amount, Need: out}
		}
		r.headroom[i] = t.Capacity
		return nil
	}
	if r.pour {
		y.Amount = max(0, min(y.Amount, t.Capacity-after))
	}
	if !(y.Amount > 0 || r.pour) {
		return &Broken{Rule: RuleAmount, Stop: s.ID, Tank: t.ID, Km: s.Km, Have: y.Amount, Detail: "want more than 0"}
	}
	after += y.Amount
	if after > t.Capacity+Tolerance {
		return &Broken{Rule: RuleCapacity, Stop: s.ID, Tank: t.ID, Km: s.Km, Have: after, Need: t.Capacity}
	}
	r.headroom[i] = min(after, t.Capacity)
	r.parts.Goods += y.Amount * x.Price
	return nil
}
