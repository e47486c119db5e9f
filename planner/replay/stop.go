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

// wait lets time pass until the stop is open, for whoever does not stay.
func (r *replayer) wait(s *planner.Stop) error {
	opens := opening(s.Open, r.clock)
	if math.IsInf(opens, 1) {
		return shut(s, r.clock)
	}
	r.charge(opens - r.clock)
	r.spend(opens - r.clock)
	return nil
}

// serve takes the services of a stop that is left on the same day.
func (r *replayer) serve(s *planner.Stop, serve []planner.Serve) error {
	for i, y := range serve {
		x := serviceOf(s, y.Tank)
		if err := r.restore(s, x, &serve[i], 0); err != nil {
			return err
		}
		r.charge(x.Min)
		r.parts.Fees += x.Fee
		r.spend(x.Min)
	}
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
	r.parts.Fees += s.Fee
	r.charge(s.DetourMin + s.StopMin)
	if v.Night {
		if done.InHand, err = r.arriveForNight(s); err == nil {
			done.Arrive.Min += done.InHand
			err = r.stay(s, done.Serve)
		}
	} else if err = r.wait(s); err == nil {
		r.spend(s.StopMin)
		err = r.serve(s, done.Serve)
	}
	if err == nil {
		err = r.lighten(s, &done, v.Drain)
	}
	if err == nil && v.Night {
		err = r.acts(s, done)
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
			if n > 1 || !slices.ContainsFunc(out, func(z planner.Serve) bool { return z.Tank == y.Tank }) {
				return nil, &planner.Broken{Rule: planner.RuleService, Stop: s.ID, Tank: y.Tank, Km: s.Km}
			}
		}
	}
	return out, nil
}
