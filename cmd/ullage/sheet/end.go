package sheet

import (
	"fmt"
	"strings"

	"ullage/planner/life"
	"ullage/planner/trip"
)

func (p *sheet) foot(sources []string) {
	if n := len(p.it.Strips); n > 0 {
		end := trip.Levels{}
		for _, s := range p.it.Strips {
			end[s.Tank] = s.Points[len(s.Points)-1].L
		}
		p.wrap("End of the route: ", p.levels(end))
		p.likelyEnd()
		p.line("")
	}
	p.handBack()
	if len(p.remarks) > 0 {
		p.line("Mind, at the calls that give the number")
		for i, text := range p.remarks {
			p.wrap(fmt.Sprintf(" %2d  ", i+1), p.prose(text))
		}
		p.line("")
	}
	p.line("Mind, on the whole trip")
	for _, text := range p.it.Cautions {
		p.wrap("  -  ", p.prose(text))
	}
	p.counts()
	p.howTos()
	p.checklists()
	if len(sources) > 0 {
		p.line("")
	}
	for _, s := range sources {
		p.wrap("", s)
	}
}

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
		if p.say.Shown(end.High-end.Low, s.Unit) >= 0.5 {
			parts = append(parts, fmt.Sprintf("%s likely %s (%.0f to %.0f)", s.Name, p.say.Quantity(end.Likely, s.Unit, 0), p.say.Shown(end.Low, s.Unit), p.say.Shown(end.High, s.Unit)))
		}
	}
	if len(parts) > 0 {
		p.wrap("                  ", fmt.Sprintf("Planned so on %.0f of 100 trips; ", 100*p.it.Confidence)+strings.Join(parts, ", "))
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
			parts = append(parts, fmt.Sprintf("%s likely %s, planned %.1f", what, p.say.Quantity(b.Likely, c.Unit, 1), p.say.Shown(b.High, c.Unit)))
		}
		k := 1 / p.say.Shown(1, "km")
		say(life.Band{Low: k * c.Per100.Low, Likely: k * c.Per100.Likely, High: k * c.Per100.High}, "on 100 "+p.say.Symbol("km"))
		say(c.Night, "a day and night without hook-up")
		if c.Tank == "diesel" && p.say.Symbol("L/100 km") != "L/100 km" {
			parts = append(parts, "that is "+p.say.Quantity(c.Per100.High, "L/100 km", 1)+" planned")
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
