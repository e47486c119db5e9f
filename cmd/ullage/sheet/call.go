package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"ullage/planner/trip"
)

func (p *sheet) call(d trip.Day, c trip.Call) {
	p.line("")
	what := trip.KindName(c.Kind) + ", "
	if c.Name == trip.KindName(c.Kind) {
		what = ""
	}
	p.line("  %s  %s  %s (%s%s)", p.clock(d, c.ArriveMin), p.say.Mark(c.Km, 1), c.Name, what, c.Place)
	p.line("         %.5f, %.5f; %s", c.Point.Lat(), c.Point.Lon(), p.prose(offRoute(c)))
	if e := c.Entry; e != nil {
		p.line("         drive in from %s at %.5f, %.5f", cmp.Or(e.Road, "the road"), e.Point.Lat(), e.Point.Lon())
	}
	for _, t := range c.Tasks {
		cost := ""
		if t.Cost > 0 {
			cost = fmt.Sprintf("%12s", p.say.Money(t.Cost, p.it.Currency))
		}
		p.line("         [ ] %-7s %-20s %6.1f %-2s  %6.1f -> %5.1f %s", t.Verb, p.tank(t.Tank), p.say.Shown(t.Amount, t.Unit), p.say.Symbol(t.Unit), p.say.Shown(t.Before, t.Unit), p.say.Shown(t.After, t.Unit), cost)
	}
	switch {
	case c.Nights > 1:
		p.line("         [ ] stay %d nights", c.Nights)
	case c.Night:
		p.line("         [ ] stay the night")
	}
	if c.Night && len(c.Tasks) > 0 {
		p.line("             (amounts are of the whole stay: what is there and what the stay uses)")
	}
	p.wrap("         arrive ", p.levels(c.Arrive))
	p.wrap("         leave  ", p.levels(c.Leave))
	if c.Night {
		p.line("         cost   %s", p.say.Money(c.Cost, p.it.Currency))
	} else {
		p.line("         cost   %s; leave at %s", p.say.Money(c.Cost, p.it.Currency), p.clock(d, c.LeaveMin))
	}
	p.wrap("         data   ", p.prose(strings.Join(c.Facts, "; ")))
	if c.Fallback != "" {
		p.wrap("         closed ", p.prose(c.Fallback))
	}
	for _, text := range c.Cautions {
		if !slices.Contains(p.remarks, text) {
			p.wrap("         mind   ", p.prose(text))
		}
	}
	var numbers []string
	for i, text := range p.remarks {
		if slices.Contains(c.Cautions, text) {
			numbers = append(numbers, fmt.Sprint(i+1))
		}
	}
	if len(numbers) > 0 {
		p.line("         mind   at the end: %s", strings.Join(numbers, ", "))
	}
}

func offRoute(c trip.Call) string {
	if c.OffKm < 0.05 && c.DetourKm < 0.5 {
		return "beside the route"
	}
	if c.ByRoad {
		return fmt.Sprintf("%.1f km off the route, by road %.1f km and %.0f min more", c.OffKm, c.DetourKm, c.DetourMin)
	}
	return fmt.Sprintf("%.1f km off the route, about %.1f km and %.0f min there and back (estimate)", c.OffKm, c.DetourKm, c.DetourMin)
}

func (p *sheet) tank(id string) string {
	for _, s := range p.it.Strips {
		if s.Tank == id {
			return s.Name
		}
	}
	return id
}

func (p *sheet) levels(at trip.Levels) string {
	var parts []string
	for _, s := range p.it.Strips {
		parts = append(parts, fmt.Sprintf("%s %.0f/%s", s.Name, p.say.Shown(at[s.Tank], s.Unit), p.say.Amount(s.Capacity, s.Unit)))
	}
	return strings.Join(parts, ", ")
}
