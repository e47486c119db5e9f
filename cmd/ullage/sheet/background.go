package sheet

import (
	"fmt"
	"strings"

	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// explained prints the cautions: those that stops point to by number, and those
// of the whole trip.
func (p *sheet) explained() {
	if len(p.notes) > 0 {
		p.line(p.say.Text("sheet.notes"))
		for i, f := range p.notes {
			p.wrap(fmt.Sprintf(" %2d  ", i+1), p.say.Fact(f))
		}
		p.line("")
	}
	p.line(p.say.Text("sheet.cautions"))
	p.list("  -  ", p.it.Cautions)
}

// uses prints what the plan expects to be used, and where that comes from.
func (p *sheet) uses() {
	if len(p.it.Counts) == 0 {
		return
	}
	p.line("")
	p.line(p.say.Text("sheet.uses", p.trips()))
	for _, c := range p.it.Counts {
		p.wrap("  ", p.use(c))
	}
}

// use is what one tank is expected to give or take.
func (p *sheet) use(c trip.Count) string {
	var parts []string
	band := func(b life.Band, per string) {
		if likely, planned := b.Sizes(); likely != 0 || planned != 0 {
			parts = append(parts, p.say.Text("sheet.expect."+string(b.Turn()), fact.V{"likely": fact.Quantity(likely, c.Unit, 1), "planned": fact.Quantity(planned, c.Unit, 1), "per": fact.Text(per)}))
		}
	}
	shown := 1 / p.say.Shown(1, "km") // in km: what is shown as one
	band(life.Band{Low: shown * c.Per100.Low, Likely: shown * c.Per100.Likely, High: shown * c.Per100.High},
		p.say.Text("sheet.use.drive", fact.V{"distance": fact.Text("100 " + p.say.Symbol("km"))}))
	band(c.Night, p.say.Text("sheet.use.day"))
	if c.Factor != 0 {
		parts = append(parts, p.say.Text("sheet.use.learnt", fact.V{"more": share(c.Factor - 1), "less": share(1 - c.Factor)}))
	}
	v := fact.V{"tank": fact.Tank(c.Tank, c.Name), "uses": fact.Text(strings.Join(parts, "; ")), "mpg": {}, "source": {}}
	if !c.Source.Nothing() {
		v["source"] = fact.Clause(c.Source)
	}
	if stored := "L/100 km"; trip.KindOfTank(c.Tank).Moves && p.say.Symbol(stored) != stored {
		v["mpg"] = fact.Quantity(c.Per100.High, stored, 1)
	}
	return p.say.Text("sheet.use", v)
}

// share is a part of one if there is one to speak of.
func share(n float64) fact.Value {
	if n < 0.005 {
		return fact.Value{}
	}
	return fact.Share(n, 0)
}

// howTos prints steps and cautions in full, each once: calls have a line of them.
func (p *sheet) howTos() {
	if len(p.it.HowTos) == 0 {
		return
	}
	p.line("")
	p.line(p.say.Text("sheet.howto"))
	for _, h := range p.it.HowTos {
		var steps []string
		for _, s := range h.Steps {
			steps = append(steps, p.say.Fact(s.Says))
		}
		for _, c := range h.Cautions {
			steps = append(steps, p.say.Fact(c.Says))
		}
		p.line("  " + p.say.Fact(h.Title))
		p.wrap("    ", strings.Join(append(steps, p.say.Fact(h.Defer)), " "))
	}
}

func (p *sheet) checklists() {
	for _, l := range p.it.Checklists {
		p.line("")
		p.line(p.say.Fact(l.Title))
		for _, i := range l.Items {
			p.wrap("  [ ] ", p.say.Fact(i.Says))
		}
	}
}
