package sheet

import (
	"ullage/planner/fact"
)

// more prints what is known last: the price of safety, and plans that one may
// like better.
func (p *sheet) more() {
	if p.it.Safety == nil && p.it.Care == nil && len(p.it.Others) == 0 {
		return
	}
	p.line("")
	p.line(p.say.Text("sheet.others"))
	if p.it.Safety != nil {
		p.wrap("  - ", p.prose(p.it.Safety.Text))
	}
	if p.it.Care != nil {
		p.wrap("  - ", p.it.Care.Text)
	}
	for _, o := range p.it.Others {
		p.wrap("  - ", p.say.Text("sheet.other", fact.V{"dearer": p.some(o.Extra), "cheaper": p.some(-o.Extra), "what": fact.Text(o.Text)}))
		for _, d := range o.Days {
			p.wrap("      ", p.prose(d))
		}
	}
}
