package sheet

import (
	"fmt"

	"ullage/planner"
	"ullage/planner/fact"
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
	var cures []fact.Fact
	for _, r := range p.it.Why {
		for _, c := range r.Cures {
			if !fact.Contains(cures, c) {
				cures = append(cures, c)
			}
		}
	}
	if len(cures) > 0 {
		p.line(p.say.Text("sheet.cure"))
		p.list("  - ", cures)
	}
	p.nearest()
	p.leftOut()
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
