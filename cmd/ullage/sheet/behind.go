package sheet

import (
	"strings"

	"ullage/planner/fact"
	"ullage/planner/trip/onward"
)

// behind prints the stops that were made, and what the gauges taught.
func (p *sheet) behind(o onward.Rest) {
	if len(p.it.Done) > 0 {
		p.line(p.say.Text("sheet.behind"))
		for _, d := range p.it.Done {
			does := d.Tasks
			if d.Night {
				does = append(does[:len(does):len(does)], p.say.Text("sheet.behind.night"))
			}
			p.wrap("  [x] ", p.say.Text("sheet.behind.stop", fact.V{"date": fact.Date(d.Date), "mark": fact.Mark(d.Km, 0),
				"name": fact.Text(d.Name), "id": fact.Text(d.Place), "does": fact.Text(strings.Join(does, ", "))}))
		}
		p.wrap("  ", p.say.Text("sheet.behind.passed"))
		p.line("")
	}
	if len(o.Lessons)+len(o.Notes) > 0 {
		p.line(p.say.Text("sheet.learnt"))
		for _, l := range o.Lessons {
			p.wrap("  - ", p.prose(l.Text))
		}
		for _, n := range o.Notes {
			p.wrap("  - ", p.prose(n))
		}
		p.line("")
	}
}
