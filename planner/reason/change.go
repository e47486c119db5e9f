package reason

import (
	"slices"

	"ullage/planner"
	"ullage/planner/fact"
)

// This file holds the changes that loosen a problem, one limit at a time.

// A change loosens a problem by x, 0 < x ≤ most; more is never worse.
type change struct {
	kind   fact.Kind // of the reason that it is, or of the change in the hirer's hand
	limit  string    // as in [planner.Reason]
	tank   string    // "" for none
	scale  float64   // what counts as a breach of 1; 0: x itself
	most   float64
	step   float64 // x is a multiple of it; 0: all or nothing, most is 1
	larger bool    // a tank holds x more, and a supply tank starts with it
	apply  func(p *planner.Problem, x float64)
}

func changed(p *planner.Problem, c change, x float64) *planner.Problem {
	q := p.Clone()
	c.apply(q, x)
	return q
}

// stretch is from the last place before stuck where the limit is restored to
// the next one after it; a tank's ends with stuck.
func (c change) stretch(p *planner.Problem, stuck float64) (from, to float64) {
	to = p.LengthKm
	for _, s := range p.Stops {
		restores := s.Night != nil
		if c.tank != "" {
			restores = slices.ContainsFunc(s.Serves, func(x planner.Service) bool { return x.Tank == c.tank })
		}
		switch {
		case !restores:
		case s.Km < stuck:
			from = s.Km
		case s.Km < to:
			to = s.Km
		}
	}
	return from, to
}

// limits are what can be to blame: tanks (as if they were larger, and started
// with that much more), ends, the day, the nights, hours, what is required, backup.
func limits(p *planner.Problem) []change {
	var out []change
	for i, t := range p.Tanks {
		if t.End != nil {
			out = append(out, endOf(planner.ReasonEnd, i, t))
		}
		out = append(out, change{kind: planner.ReasonTank, limit: t.ID, tank: t.ID, scale: t.Capacity, most: 4 * t.Capacity, step: 0.1, larger: true,
			apply: func(p *planner.Problem, x float64) {
				p.Tanks[i].Capacity += x
				if t.Kind == planner.Supply {
					p.Tanks[i].Start += x
				}
			}})
	}
	d := p.Drive
	out = append(out, longerKm(planner.ReasonDayKm, max(d.MaxKmPerDay, p.LengthKm-d.MaxKmPerDay), d.MaxKmPerDay),
		longerMin(planner.ReasonDayMin, max(d.MaxMinPerDay, 2*d.Minutes(0, p.LengthKm)), d.MaxMinPerDay))
	if p.Nights != nil {
		out = append(out, moreNights(planner.ReasonNightsMore, 32), fewerNights(planner.ReasonNightsLess, p.Nights.Min))
	}
	return append(out, wholly(p)...)
}

// wholly are the limits that give way altogether or not at all.
func wholly(p *planner.Problem) []change {
	var out []change
	one := func(kind fact.Kind, limit string, apply func(p *planner.Problem, x float64)) {
		out = append(out, change{kind: kind, limit: limit, most: 1, apply: apply})
	}
	if p.Backup {
		one(planner.ReasonBackup, "backup", func(p *planner.Problem, _ float64) { p.Backup = false })
	}
	if slices.ContainsFunc(p.Stops, func(s planner.Stop) bool { return len(s.Open) > 0 }) {
		one(planner.ReasonOpen, "open", func(p *planner.Problem, _ float64) {
			for i := range p.Stops {
				p.Stops[i].Open = nil
			}
		})
	}
	for i, s := range p.Stops {
		if s.Required {
			one(planner.ReasonStop, s.ID, func(p *planner.Problem, _ float64) { p.Stops[i].Required = false })
		}
	}
	return out
}

// endOf asks less of a tank at the end.
func endOf(kind fact.Kind, i int, t planner.Tank) change {
	return change{kind: kind, limit: t.ID, tank: t.ID, scale: t.Capacity, most: t.Capacity, step: 0.1,
		apply: func(p *planner.Problem, x float64) { p.Tanks[i].End = looserEnd(t, x) }}
}

func looserEnd(t planner.Tank, x float64) *planner.End {
	end := *t.End
	if end.AtLeast != nil {
		least := max(0, *end.AtLeast-x)
		end.AtLeast = &least
	}
	if end.AtMost != nil {
		most := min(t.Capacity, *end.AtMost+x)
		end.AtMost = &most
	}
	return &end
}

func longerKm(kind fact.Kind, most, scale float64) change {
	return change{kind: kind, limit: "km", scale: scale, most: most, step: 1, apply: func(p *planner.Problem, x float64) { p.Drive.MaxKmPerDay += x }}
}

func longerMin(kind fact.Kind, most, scale float64) change {
	return change{kind: kind, limit: "min", scale: scale, most: most, step: 1, apply: func(p *planner.Problem, x float64) { p.Drive.MaxMinPerDay += x }}
}

func moreNights(kind fact.Kind, most float64) change {
	return change{kind: kind, limit: "nights", most: most, step: 1, apply: func(p *planner.Problem, x float64) {
		p.Nights = &planner.Range{Min: p.Nights.Min, Max: p.Nights.Max + int(x)}
	}}
}

func fewerNights(kind fact.Kind, most int) change {
	return change{kind: kind, limit: "nights", most: float64(most), step: 1, apply: func(p *planner.Problem, x float64) {
		p.Nights = &planner.Range{Min: p.Nights.Min - int(x), Max: p.Nights.Max}
	}}
}

// A loosened limit is one that allows a plan when it gives way by x.
type loosened struct {
	change
	x float64
}
