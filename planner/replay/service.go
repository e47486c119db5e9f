package replay

import (
	"math"
	"slices"

	"ullage/planner"
)

// This file replays one service.

// restore takes one service, with use headroom going while it is taken.
func (r *replayer) restore(s *planner.Stop, x *planner.Service, y *planner.Serve, use float64) error {
	i := r.tankAt[x.Tank]
	t := r.p.Tanks[i]
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

func serviceOf(s *planner.Stop, tank string) *planner.Service {
	i := slices.IndexFunc(s.Serves, func(x planner.Service) bool { return x.Tank == tank })
	return &s.Serves[i]
}
