package main

import (
	"fmt"
	"strings"

	"ullage/planner/life"
	"ullage/planner/life/units"
)

// This file prints what stands behind the days: the return, how things are
// done, and checklists.

func (p *sheet) handBack() {
	r := p.it.Return
	if r == nil {
		return
	}
	p.line("Giving it back, %s", r.Date)
	for _, s := range r.Steps {
		p.wrap("  [ ] ", p.prose(s))
	}
	if r.Station != "" {
		p.wrap("  last place for diesel: ", p.prose(r.Station))
	}
	p.wrap("  then: ", p.prose(strings.Join(r.Agreed, "; ")))
	for _, w := range r.Warnings {
		p.wrap("  !   ", p.prose(w))
	}
	p.line("")
}

// likelyEnd prints the bands at the end of the route.
func (p *sheet) likelyEnd() {
	var parts []string
	for _, s := range p.it.Strips {
		end := s.Points[len(s.Points)-1]
		low, symbol := p.amount(end.Low, s.Unit)
		likely, _ := p.amount(end.Likely, s.Unit)
		high, _ := p.amount(end.High, s.Unit)
		if high-low >= 0.5 {
			parts = append(parts, fmt.Sprintf("%s likely %.0f %s (%.0f to %.0f)", s.Name, likely, symbol, low, high))
		}
	}
	if len(parts) > 0 {
		p.wrap("                  ", fmt.Sprintf("Planned so on %.0f of 100 trips; ", 100*p.it.Confidence)+strings.Join(parts, ", "))
	}
}

// scales prints the mass, if it is known.
func (p *sheet) scales() {
	if w := p.it.Weight; w != nil {
		u := p.units.Unit(units.Mass)
		p.line("On the scales at the start about %s of %s", u.Format(w.Kg), u.Format(w.AllowedKg))
	}
}

// howTos prints the steps; their cautions stand at the calls or at the end.
func (p *sheet) howTos() {
	if len(p.it.HowTos) == 0 {
		return
	}
	p.line("")
	p.line("How it is done")
	for _, h := range p.it.HowTos {
		var steps []string
		for _, s := range h.Steps {
			steps = append(steps, s.Text)
		}
		if !p.atCalls(h) {
			for _, c := range h.Cautions {
				steps = append(steps, c.Text)
			}
			steps = append(steps, h.Defer)
		}
		p.wrap("  "+h.Title+": ", p.prose(strings.Join(steps, " ")))
	}
}

// counts prints what the plan counts with, and where that comes from.
func (p *sheet) counts() {
	if len(p.it.Counts) == 0 {
		return
	}
	p.line("")
	p.line("Counted with, on %.0f of 100 trips enough", 100*p.it.Confidence)
	for _, c := range p.it.Counts {
		var parts []string
		say := func(b life.Band, what string) {
			if b.Likely == 0 && b.High == 0 {
				return
			}
			likely, symbol := p.amount(b.Likely, c.Unit)
			high, _ := p.amount(b.High, c.Unit)
			parts = append(parts, fmt.Sprintf("%s likely %.1f %s, planned %.1f", what, likely, symbol, high))
		}
		distance := p.units.Unit(units.Distance)
		k := 1 / distance.Show(1)
		say(life.Band{Low: k * c.Per100.Low, Likely: k * c.Per100.Likely, High: k * c.Per100.High}, "on 100 "+distance.Symbol)
		say(c.Night, "a day and night without hook-up")
		if u := p.units.Unit(units.Consumption); c.Tank == "diesel" && u.ID != "L/100km" {
			parts = append(parts, "that is "+u.Format(c.Per100.High)+" planned")
		}
		if c.Factor != 0 {
			parts = append(parts, fmt.Sprintf("learnt: %.0f %% of the usual", 100*c.Factor))
		}
		p.wrap("  "+c.Name+": ", strings.Join(parts, "; ")+"; "+p.prose(c.Source))
	}
}

// atCalls says whether calls carry the cautions of a how-to.
func (p *sheet) atCalls(h life.HowTo) bool {
	for _, d := range p.it.Days {
		for _, c := range d.Calls {
			for _, id := range c.HowTo {
				if id == h.ID {
					return true
				}
			}
		}
	}
	return false
}

func (p *sheet) checklists() {
	for _, l := range p.it.Checklists {
		p.line("")
		p.line("%s", l.Title)
		for _, i := range l.Items {
			p.wrap("  [ ] ", p.prose(i.Text))
		}
	}
}

func breaks(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("; take %s of %.0f min besides", count(n, "break", "breaks"), life.BreakMin)
}
