package audit

import (
	"math"
	"slices"

	"ullage/planner"
)

// This file audits one tank at a time, by its level over the whole trip.

func checkTank(p *planner.Problem, plan planner.Plan, legs []leg, t planner.Tank) error {
	g := &gauge{Tank: t, level: t.Start}
	for _, l := range legs {
		s := l.at
		g.driveTo(s.Km, s.DetourKm/2)
		if err := g.stated(s, "arrive.levels", l.Arrive.Levels, len(p.Tanks)); err != nil {
			return err
		}
		if err := g.holds(planner.RuleReserve, s, t.Reserve); err != nil {
			return err
		}
		taken := slices.IndexFunc(l.Serve, func(y planner.Serve) bool { return y.Tank == t.ID })
		if taken >= 0 && p.Backup {
			if err := g.holds(planner.RuleSpare, s, offered(s, t.ID).Spare); err != nil {
				return err
			}
		}
		if err := g.visit(p, l, taken); err != nil {
			return err
		}
		if err := g.stated(s, "leave.levels", l.Leave.Levels, len(p.Tanks)); err != nil {
			return err
		}
		g.driveTo(s.Km, s.DetourKm/2)
		if err := g.holds(planner.RuleReserve, s, t.Reserve); err != nil {
			return err
		}
	}
	g.driveTo(p.LengthKm, 0)
	if err := g.holds(planner.RuleReserve, nil, t.Reserve); err != nil {
		return err
	}
	if err := g.stated(nil, "end.levels", plan.End.Levels, len(p.Tanks)); err != nil {
		return err
	}
	return g.atEnd(plan.End.Refill)
}

// visit is what is done at a place until it is left.
func (g *gauge) visit(p *planner.Problem, l leg, taken int) error {
	arrived := *g
	if err := g.atPlace(l, taken); err != nil {
		return err
	}
	if err := g.holds(planner.RuleReserve, l.at, g.Reserve); err != nil {
		return err
	}
	if taken >= 0 {
		if err := arrived.acts(l, l.Serve[taken]); err != nil {
			return err
		}
	}
	return g.drains(p, l, taken)
}

// atPlace is the service taken, if any (taken ≥ 0), and the night, if taken.
func (g *gauge) atPlace(l leg, taken int) error {
	use := 0.0
	if l.Night {
		use = l.at.Night.Use[g.ID]
	}
	if taken < 0 {
		g.use(use)
		return nil
	}
	return g.served(l, l.Serve[taken].Amount, use)
}

// served takes one service, with use going while it is taken.
func (g *gauge) served(l leg, amount, use float64) error {
	broken := &planner.Broken{Stop: l.at.ID, Tank: g.ID, Km: l.at.Km}
	if g.Kind == planner.Waste {
		out := math.Max(g.level+use, 0)
		if !(math.Abs(amount-out) <= statedTolerance) {
			broken.Rule, broken.Have, broken.Need = planner.RuleAmount, amount, out
			return broken
		}
		g.level = 0
		return nil
	}
	if !(amount > 0) || math.IsInf(amount, 1) {
		broken.Rule, broken.Have, broken.Detail = planner.RuleAmount, amount, planner.NothingTaken
		return broken
	}
	if g.level += amount - use; g.level > g.Capacity+planner.Tolerance {
		broken.Rule, broken.Have, broken.Need = planner.RuleCapacity, g.level, g.Capacity
		return broken
	}
	g.level = math.Min(g.level, g.Capacity)
	return nil
}

func (g *gauge) atEnd(refill map[string]float64) error {
	end, missing := g.End, 0.0
	if end != nil && end.AtMost != nil && g.level > *end.AtMost+planner.Tolerance {
		return &planner.Broken{Rule: planner.RuleEnd, Tank: g.ID, Km: g.km, Have: g.level, Need: *end.AtMost}
	}
	if end != nil && end.AtLeast != nil {
		missing = math.Max(0, *end.AtLeast-g.level)
		if missing > planner.Tolerance && end.RefillPrice == nil {
			return &planner.Broken{Rule: planner.RuleEnd, Tank: g.ID, Km: g.km, Have: g.level, Need: *end.AtLeast}
		}
	}
	return g.wrong(nil, "end.refill", refill[g.ID], missing)
}

// wrong compares a number stated for the tank.
func (g *gauge) wrong(s *planner.Stop, field string, have, want float64) error {
	if !differ(have, want) {
		return nil
	}
	b := &planner.Broken{Rule: planner.RuleMoment, Tank: g.ID, Field: field, Km: g.km, Have: have, Need: want}
	if s != nil {
		b.Stop = s.ID
	}
	return b
}

// stated compares the level that a plan shows for the tank; every tank of the
// problem and no other must be shown.
func (g *gauge) stated(s *planner.Stop, field string, levels map[string]float64, tanks int) error {
	level, shown := levels[g.ID]
	if !shown || len(levels) != tanks {
		level = math.NaN()
	}
	return g.wrong(s, field, level, g.level)
}
