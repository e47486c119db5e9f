package sheet

import (
	"cmp"
	"fmt"

	"ullage/planner"
	"ullage/planner/trip"
)

func (p *sheet) refusal() {
	if p.it.Status == planner.Unknown {
		p.line("No plan was found in the time given, nor a proof that there is none: give more time with -within, or ease the limits.")
		return
	}
	p.line("There is no plan for this trip:")
	for _, r := range p.it.Why {
		p.wrap("  - ", p.prose(r.Text))
		for _, cure := range r.Cures {
			p.wrap("      cure: ", p.prose(cure))
		}
	}
	p.nearest()
	for _, c := range p.it.Places {
		if c.Excluded != "" {
			p.wrap(fmt.Sprintf("  %s  ", p.say.Mark(c.Km, 1)), fmt.Sprintf("%s left out: %s", cmp.Or(c.Name, trip.KindName(c.Kind)+" "+c.Place), p.prose(c.Excluded)))
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
	p.line("NOT A VALID PLAN, only what comes nearest to one. It breaks:")
	for _, text := range n.Broken {
		p.wrap("  ! ", p.prose(text))
	}
	for _, d := range n.Days {
		p.wrap("    ", p.prose(d))
	}
	p.line("")
}
