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
		p.wrap("  - ", p.prose(r.Text))
		for _, cure := range r.Cures {
			p.wrap("      "+p.say.Text("sheet.cure")+" ", p.prose(cure))
		}
	}
	p.nearest()
	for _, c := range p.it.Places {
		if c.Excluded != "" {
			p.wrap(fmt.Sprintf("  %s  ", p.say.Mark(c.Km, 1)), p.say.Text("sheet.excluded",
				fact.V{"name": fact.Text(p.named(c.Name, c.Kind)), "id": fact.Text(c.Place), "why": fact.Text(p.prose(c.Excluded))}))
		}
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
	for _, text := range n.Broken {
		p.wrap("  ! ", p.prose(text))
	}
	for _, d := range n.Days {
		p.wrap("    ", p.prose(d))
	}
	p.line("")
}
