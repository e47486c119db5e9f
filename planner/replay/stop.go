package replay

import (
	"math"
	"slices"

	"ullage/planner"
)

// This file replays what is done at one stop.

func (r *replayer) arrive(s *planner.Stop, serve []planner.Serve) error {
	if err := r.keepsReserve(s.ID); err != nil {
		return err
	}
	if r.dayKm > r.p.Drive.MaxKmPerDay+planner.Tolerance {
		return &planner.Broken{Rule: planner.RuleDayKm, Stop: s.ID, Km: s.Km, Have: r.dayKm, Need: r.p.Drive.MaxKmPerDay}
	}
	if !r.p.Backup {
		return nil
	}
	for _, y := range serve {
		if have, need := r.headroom[r.tankAt[y.Tank]], serviceOf(s, y.Tank).Spare; have < need-planner.Tolerance {
			return &planner.Broken{Rule: planner.RuleSpare, Stop: s.ID, Tank: y.Tank, Km: s.Km, Have: have, Need: need}
		}
	}
	return nil
}

// wait lets time pass until the stop is open.
func (r *replayer) wait(s *planner.Stop) error {
	for _, w := range s.Open {
		if r.clock <= w[1]+planner.Tolerance {
			waiting := max(0, w[0]-r.clock)
			r.spend(waiting)
			r.charge(waiting)
			return nil
		}
	}
	if len(s.Open) == 0 {
		return nil
	}
	return &planner.Broken{Rule: planner.RuleOpen, Stop: s.ID, Km: s.Km, Have: r.clock, Need: s.Open[len(s.Open)-1][1]}
}

// serve takes the services of a stop that is left on the same day.
func (r *replayer) serve(s *planner.Stop, serve []planner.Serve) error {
	for i, y := range serve {
		x := serviceOf(s, y.Tank)
		if err := r.restore(s, x, &serve[i], 0); err != nil {
			return err
		}
		r.spend(x.Min)
	}
	return nil
}

// stay takes the night: services happen at any time during it, so only what
// is left when it is over counts.
func (r *replayer) stay(s *planner.Stop, serve []planner.Serve) error {
	d, n := r.p.Drive, s.Night
	if r.dayMin > d.MaxMinPerDay+planner.Tolerance {
		return &planner.Broken{Rule: planner.RuleDayMin, Stop: s.ID, Km: s.Km, Have: r.dayMin, Need: d.MaxMinPerDay}
	}
	if r.dayMin > 1440*float64(n.Nights)+planner.Tolerance {
		return &planner.Broken{Rule: planner.RuleNight, Stop: s.ID, Km: s.Km, Detail: planner.NightTooShort}
	}
	for i, y := range serve {
		if err := r.restore(s, serviceOf(s, y.Tank), &serve[i], n.Use[y.Tank]); err != nil {
			return err
		}
	}
	for i, t := range r.p.Tanks {
		if !slices.ContainsFunc(serve, func(y planner.Serve) bool { return y.Tank == t.ID }) {
			r.headroom[i] = min(r.headroom[i]-n.Use[t.ID], t.Capacity)
		}
	}
	r.nights += n.Nights
	r.clock, r.dayKm, r.dayMin = d.DepartMin+1440*float64(r.nights), 0, 0
	r.parts.Nights += n.Fee
	return r.keepsReserve(s.ID)
}

// restore takes one service, with use headroom going while it is taken.
func (r *replayer) restore(s *planner.Stop, x *planner.Service, y *planner.Serve, use float64) error {
	i := r.tankAt[x.Tank]
	t := r.p.Tanks[i]
	r.charge(x.Min)
	r.parts.Fees += x.Fee
	after := r.headroom[i] - use
	if t.Kind == planner.Waste {
		out := t.Capacity - min(after, t.Capacity)
		if r.drain {
			y.Amount = out
		}
		if !(math.Abs(y.Amount-out) <= planner.Tolerance) {
			return &planner.Broken{Rule: planner.RuleAmount, Stop: s.ID, Tank: t.ID, Km: s.Km, Have: y.Amount, Need: out}
		}
		r.headroom[i] = t.Capacity
		return nil
	}
	if r.pour {
		y.Amount = max(0, min(y.Amount, t.Capacity-after))
	}
	if !(y.Amount > 0 || r.pour) {
		return &planner.Broken{Rule: planner.RuleAmount, Stop: s.ID, Tank: t.ID, Km: s.Km, Have: y.Amount, Detail: planner.NothingTaken}
	}
	after += y.Amount
	if after > t.Capacity+planner.Tolerance {
		return &planner.Broken{Rule: planner.RuleCapacity, Stop: s.ID, Tank: t.ID, Km: s.Km, Have: after, Need: t.Capacity}
	}
	r.headroom[i] = min(after, t.Capacity)
	r.parts.Goods += y.Amount * x.Price
	return nil
}

func (r *replayer) visit(s *planner.Stop, v planner.Visit) (planner.Visit, error) {
	if v.Night && s.Night == nil {
		return planner.Visit{}, &planner.Broken{Rule: planner.RuleNight, Stop: s.ID, Km: s.Km, Detail: planner.NightNotThere}
	}
	serve, err := ownOrder(s, v)
	if err != nil {
		return planner.Visit{}, err
	}
	r.visited[s.ID] = v.Night
	done := planner.Visit{Stop: s.ID, Night: v.Night, Serve: serve}

	r.drive(s.Km-r.km, r.p.Drive.Minutes(r.km, s.Km))
	r.km = s.Km
	r.drive(s.DetourKm/2, s.DetourMin/2)
	done.Arrive = r.moment()
	if err := r.arrive(s, serve); err != nil {
		return planner.Visit{}, err
	}
	if err := r.wait(s); err != nil {
		return planner.Visit{}, err
	}
	r.spend(s.StopMin)
	r.parts.Fees += s.Fee
	r.charge(s.DetourMin + s.StopMin)

	if v.Night {
		err = r.stay(s, serve)
	} else {
		err = r.serve(s, serve)
	}
	if err != nil {
		return planner.Visit{}, err
	}
	done.Leave = r.moment()
	r.drive(s.DetourKm/2, s.DetourMin/2)
	return done, r.keepsReserve(s.ID)
}

// ownOrder sorts the services of a visit as the stop lists them.
func ownOrder(s *planner.Stop, v planner.Visit) ([]planner.Serve, error) {
	var out []planner.Serve
	for _, x := range s.Serves {
		for _, y := range v.Serve {
			if y.Tank == x.Tank && (v.Night || !x.GuestsOnly) {
				out = append(out, y)
				break
			}
		}
	}
	if len(out) < len(v.Serve) {
		for _, y := range v.Serve {
			n := len(slices.DeleteFunc(slices.Clone(v.Serve), func(z planner.Serve) bool { return z.Tank != y.Tank }))
			if n > 1 || !slices.Contains(out, y) {
				return nil, &planner.Broken{Rule: planner.RuleService, Stop: s.ID, Tank: y.Tank, Km: s.Km}
			}
		}
	}
	return out, nil
}

func serviceOf(s *planner.Stop, tank string) *planner.Service {
	i := slices.IndexFunc(s.Serves, func(x planner.Service) bool { return x.Tank == tank })
	return &s.Serves[i]
}
