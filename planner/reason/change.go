package reason

import (
	"fmt"
	"slices"
	"strings"

	"ullage/planner"
)

// This file holds the changes that loosen a problem, one limit at a time.

// A change loosens a problem by x, 0 < x ≤ most; more is never worse.
type change struct {
	name   string        // limit
	tank   string        // "" for none
	text   string        // with one verb for the amount, none if step is 0
	scale  float64       // what counts as a breach of 1; 0: x itself
	of     *planner.Tank // whose unit the amount is in, with the verb %s; nil: none
	most   float64
	step   float64 // x is a multiple of it; 0: all or nothing, most is 1
	larger bool    // a tank holds x more, and a supply tank starts with it
	apply  func(p *planner.Problem, x float64)
}

func (c change) say(x float64) string {
	switch {
	case c.step == 0:
		return c.text
	case c.of != nil:
		return planner.OneOrMore(fmt.Sprintf(c.text, c.of.Amount(x)))
	}
	return planner.OneOrMore(fmt.Sprintf(c.text, x))
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
			out = append(out, endOf(i, t))
		}
		out = append(out, change{name: t.ID, tank: t.ID, of: &t, text: t.Called() + " falls short by %s", scale: t.Capacity, larger: true, most: 4 * t.Capacity, step: 0.1, apply: func(p *planner.Problem, x float64) {
			p.Tanks[i].Capacity += x
			if t.Kind == planner.Supply {
				p.Tanks[i].Start += x
			}
		}})
	}
	d := p.Drive
	out = append(out,
		change{name: "km", text: "a day on the road is too short by %.0f km", scale: d.MaxKmPerDay, most: max(d.MaxKmPerDay, p.LengthKm-d.MaxKmPerDay), step: 1, apply: func(p *planner.Problem, x float64) { p.Drive.MaxKmPerDay += x }},
		change{name: "min", text: "a day on the road is too short by %.0f minutes", scale: d.MaxMinPerDay, most: max(d.MaxMinPerDay, 2*d.Minutes(0, p.LengthKm)), step: 1, apply: func(p *planner.Problem, x float64) { p.Drive.MaxMinPerDay += x }})
	if p.Nights != nil {
		out = append(out, moreNights(32, "the trip needs %.0f more night(s) than wished"), change{name: "nights", text: "there are places for %.0f night(s) fewer than wished",
			most: float64(p.Nights.Min), step: 1, apply: func(p *planner.Problem, x float64) {
				p.Nights = &planner.Range{Min: p.Nights.Min - int(x), Max: p.Nights.Max}
			}})
	}
	one := func(name, text string, apply func(p *planner.Problem, x float64)) {
		out = append(out, change{name: name, text: text, most: 1, apply: apply})
	}
	if p.Backup {
		one("backup", "no plan survives the closure of a place", func(p *planner.Problem, _ float64) { p.Backup = false })
	}
	if slices.ContainsFunc(p.Stops, func(s planner.Stop) bool { return len(s.Open) > 0 }) {
		one("open", "places are closed when the trip comes by", func(p *planner.Problem, _ float64) {
			for i := range p.Stops {
				p.Stops[i].Open = nil
			}
		})
	}
	for i, s := range p.Stops {
		if s.Required {
			one(s.ID, "the required stop "+s.ID+" does not fit", func(p *planner.Problem, _ float64) { p.Stops[i].Required = false })
		}
	}
	return out
}

// endOf asks less of a tank at the end.
func endOf(i int, t planner.Tank) change {
	return change{name: t.ID, tank: t.ID, of: &t, text: t.Called() + " misses what it must hold at the end by %s", scale: t.Capacity, most: t.Capacity, step: 0.1,
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

// hirerChanges to a tank: start fuller (waste: emptier), use less. To the day
// and the nights: the limit itself.
func hirerChanges(p *planner.Problem, limit change) []change {
	if limit.tank == "" {
		switch limit.name {
		case "km":
			limit.text = "drive up to %.0f km more in a day"
		case "min":
			limit.text = "be up to %.0f minutes longer on the road in a day"
		case "nights":
			limit.text = map[bool]string{true: "stay %.0f more night(s)", false: "stay %.0f night(s) fewer"}[strings.Contains(limit.text, "more")]
		default:
			return nil
		}
		return []change{limit}
	}
	i := slices.IndexFunc(p.Tanks, func(t planner.Tank) bool { return t.ID == limit.tank })
	t := p.Tanks[i]
	start := change{name: t.ID, of: &t, text: "start with %s more of " + t.Called(), most: t.Capacity - t.Start, step: 0.1, apply: func(p *planner.Problem, x float64) { p.Tanks[i].Start += x }}
	if t.Kind == planner.Waste {
		start.text, start.most = "start with %s less in "+t.Called(), t.Start
		start.apply = func(p *planner.Problem, x float64) { p.Tanks[i].Start -= x }
	}
	out := []change{start,
		{name: t.ID, text: "use %.0f %% less of " + t.Called(), most: 75, step: 1, apply: func(p *planner.Problem, x float64) { useLess(p, i, x/100) }},
		{name: "km", text: "drive up to %.0f km more in a day", most: p.Drive.MaxKmPerDay, step: 1, apply: func(p *planner.Problem, x float64) { p.Drive.MaxKmPerDay += x }},
	}
	if p.Nights != nil {
		out = append(out, moreNights(4, "stay %.0f more night(s), where "+t.Called()+" can be restored"))
	}
	if t.End != nil {
		end := endOf(i, t)
		end.text = map[planner.Kind]string{planner.Supply: "hand back with %s less of " + t.Called(), planner.Waste: "hand back with %s more in " + t.Called()}[t.Kind]
		out = append(out, end)
	}
	return out
}

func moreNights(most float64, text string) change {
	return change{name: "nights", text: text, most: most, step: 1, apply: func(p *planner.Problem, x float64) {
		p.Nights = &planner.Range{Min: p.Nights.Min, Max: p.Nights.Max + int(x)}
	}}
}

func useLess(p *planner.Problem, tank int, share float64) {
	t := &p.Tanks[tank]
	if t.PerKm > 0 {
		t.PerKm *= 1 - share
	}
	for _, s := range p.Stops {
		if s.Night != nil && s.Night.Use[t.ID] > 0 {
			s.Night.Use[t.ID] *= 1 - share
		}
	}
}

// A loosened limit is one that allows a plan when it gives way by x.
type loosened struct {
	change
	x float64
}
