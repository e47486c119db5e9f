package reason

import (
	"slices"

	"ullage/planner"
	"ullage/planner/fact"
)

// This file holds what the person who hires the vehicle can change.

// inHand are the kinds of change that a limit is for the hirer, too.
var inHand = map[fact.Kind]fact.Kind{
	planner.ReasonDayKm:      planner.ChangeDayKm,
	planner.ReasonDayMin:     planner.ChangeDayMin,
	planner.ReasonNightsMore: planner.ChangeNightsMore,
	planner.ReasonNightsLess: planner.ChangeNightsLess,
}

// hirerChanges to a tank: start fuller (waste: emptier), use less, stop more
// often, hand it back otherwise. To the day and the nights: the limit itself.
func hirerChanges(p *planner.Problem, limit change) []change {
	if limit.tank == "" {
		kind, ok := inHand[limit.kind]
		if !ok {
			return nil
		}
		limit.kind = kind
		return []change{limit}
	}
	i := slices.IndexFunc(p.Tanks, func(t planner.Tank) bool { return t.ID == limit.tank })
	t := p.Tanks[i]
	start, sign, endKind := change{kind: planner.ChangeStartMore, most: t.Capacity - t.Start}, 1.0, planner.ChangeEndLess
	if t.Kind == planner.Waste {
		start, sign, endKind = change{kind: planner.ChangeStartLess, most: t.Start}, -1, planner.ChangeEndMore
	}
	start.tank, start.step = t.ID, 0.1
	start.apply = func(p *planner.Problem, x float64) { p.Tanks[i].Start += sign * x }
	out := []change{start,
		{kind: planner.ChangeUseLess, tank: t.ID, most: 75, step: 1, apply: func(p *planner.Problem, x float64) { useLess(p, i, x/100) }},
		longerKm(planner.ChangeDayKm, p.Drive.MaxKmPerDay, 0),
	}
	if p.Nights != nil {
		more := moreNights(planner.ChangeNightsMore, 4)
		more.tank = t.ID // where it can be restored
		out = append(out, more)
	}
	if t.End != nil {
		out = append(out, endOf(endKind, i, t))
	}
	return out
}

func useLess(p *planner.Problem, tank int, share float64) {
	t := &p.Tanks[tank]
	if t.PerKm > 0 {
		t.PerKm *= 1 - share
	}
	for _, s := range p.Stops {
		if s.Night != nil && s.Night.Use[t.ID] > 0 {
			s.Night.Use[t.ID] *= 1 - share
			if by := s.Night.ByNight[t.ID]; by != nil {
				less := make([]float64, len(by))
				for i, use := range by {
					less[i] = use * (1 - share)
				}
				s.Night.ByNight[t.ID] = less
			}
		}
	}
}
