package replay

import (
	"maps"
	"slices"

	"ullage/planner"
)

func (r *replayer) keptRequired(s planner.Stop) bool {
	night, visited := r.visited[s.ID]
	return visited && (night || s.Night == nil)
}

// finish drives to the end of the route and settles the end conditions.
func (r *replayer) finish() (planner.PlanEnd, error) {
	p := r.p
	r.drive(p.LengthKm-r.km, p.Drive.Minutes(r.km, p.LengthKm))
	r.km = p.LengthKm
	if err := r.keepsReserve(""); err != nil {
		return planner.PlanEnd{}, err
	}
	if r.dayKm > p.Drive.MaxKmPerDay+planner.Tolerance {
		return planner.PlanEnd{}, &planner.Broken{Rule: planner.RuleDayKm, Km: r.km, Have: r.dayKm, Need: p.Drive.MaxKmPerDay}
	}
	if r.dayMin > p.Drive.MaxMinPerDay+planner.Tolerance {
		return planner.PlanEnd{}, &planner.Broken{Rule: planner.RuleDayMin, Km: r.km, Have: r.dayMin, Need: p.Drive.MaxMinPerDay}
	}
	if last := p.Drive.LastDayMin(); r.dayMin > last+planner.Tolerance {
		return planner.PlanEnd{}, &planner.Broken{Rule: planner.RuleKeys, Km: r.km, Have: r.dayMin, Need: last}
	}
	if n := p.Nights; n != nil && (r.nights < n.Min || r.nights > n.Max) {
		return planner.PlanEnd{}, &planner.Broken{Rule: planner.RuleNights, Km: r.km, Have: float64(r.nights), Need: float64(min(max(r.nights, n.Min), n.Max))}
	}
	end := planner.PlanEnd{Min: r.clock, Levels: r.levels()}
	for _, t := range p.Tanks {
		if err := r.settle(t, &end); err != nil {
			return planner.PlanEnd{}, err
		}
	}
	for _, tank := range slices.Sorted(maps.Keys(end.Refill)) {
		r.parts.Refill += end.Refill[tank] * *p.Tanks[r.tankAt[tank]].End.RefillPrice
	}
	return end, nil
}

// settle holds one tank to its end condition, paying for what may be missing.
func (r *replayer) settle(t planner.Tank, end *planner.PlanEnd) error {
	if t.End == nil {
		return nil
	}
	level := end.Levels[t.ID]
	if t.End.AtMost != nil && level > *t.End.AtMost+planner.Tolerance {
		return &planner.Broken{Rule: planner.RuleEnd, Tank: t.ID, Km: r.km, Have: level, Need: *t.End.AtMost}
	}
	if t.End.AtLeast == nil || level >= *t.End.AtLeast {
		return nil
	}
	missing := *t.End.AtLeast - level
	if t.End.RefillPrice != nil {
		if end.Refill == nil {
			end.Refill = map[string]float64{}
		}
		end.Refill[t.ID] = missing
		return nil
	}
	if missing > planner.Tolerance {
		return &planner.Broken{Rule: planner.RuleEnd, Tank: t.ID, Km: r.km, Have: level, Need: *t.End.AtLeast}
	}
	return nil
}
