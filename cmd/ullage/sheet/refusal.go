package sheet

import (
	"fmt"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// refused says that there is no plan, or that none is known.
func (p *sheet) refused() {
	if p.it.Status == planner.Unknown {
		p.wrap("", p.say.Text("sheet.unknown"))
		return
	}
	p.line(p.say.Text("sheet.refused"))
}

// reasons says why there is no plan.
func (p *sheet) reasons() {
	for _, r := range p.it.Why {
		p.wrap("  - ", p.say.Fact(r.Says))
	}
}

// help says what would help, what comes nearest, and what could not serve. Each limit of
// Why binds alone, so each cure helps alone: they are one list.
func (p *sheet) help() {
	if p.it.Status == planner.Unknown {
		return
	}
	cures := allCures(p.it)
	if len(cures) > 0 {
		p.line(p.say.Text("sheet.cure"))
		p.list("  - ", cures)
	}
	if !p.it.Tried.Nothing() {
		p.wrap("", p.say.Fact(p.it.Tried))
	}
	p.nearest()
	p.leftOut()
}

// allCures are those of the reasons and all others, each once.
func allCures(it trip.Itinerary) []fact.Fact {
	var out []fact.Fact
	add := func(cures []fact.Fact) {
		for _, c := range cures {
			if !fact.Contains(out, c) {
				out = append(out, c)
			}
		}
	}
	for _, r := range it.Why {
		add(r.Cures)
	}
	add(it.Cures)
	return out
}

// leftOut lists the places that could not serve, with the reason.
func (p *sheet) leftOut() {
	any := false
	for _, c := range p.it.Places {
		if c.Excluded == nil {
			continue
		}
		if !any {
			p.line(p.say.Text("sheet.left_out"))
		}
		any = true
		p.wrap(fmt.Sprintf("  - %s  ", p.say.Mark(c.Km, 1)), p.say.Text("sheet.excluded",
			fact.V{"name": fact.Text(p.named(c.Name, c.Kind)), "id": fact.Text(c.Place), "why": fact.Clause(*c.Excluded)}))
	}
	if any {
		p.line("")
	}
}

// nearest tells how far the trip can go if limits give way.
func (p *sheet) nearest() {
	p.line("")
	n := p.it.Nearest
	if n == nil {
		return
	}
	p.wrap("", p.say.Text("sheet.nearest"))
	p.list("  ! ", n.Broken)
	p.list("    ", n.Days)
	p.line("")
}
