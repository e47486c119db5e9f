package sheet

import (
	"fmt"

	"ullage/planner"
	"ullage/planner/fact"
)

// refusal says why there is no plan, what would help, and what comes nearest.
func (p *sheet) refusal() {
	if p.it.Status == planner.Unknown {
		p.wrap("", p.say.Text("sheet.unknown"))
		return
	}
	p.line(p.say.Text("sheet.refused"))
	for _, r := range p.it.Why {
		p.wrap("  - ", p.say.Fact(r.Says))
		if len(r.Cures) > 0 {
			p.line("    " + p.say.Text("sheet.cure"))
			p.list("      - ", r.Cures)
		}
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
