package sheet

import (
	"strings"

	"ullage/planner/fact"
	"ullage/planner/trip"
	"ullage/planner/trip/onward"
)

// behind prints the stops that were made, and what the gauges taught.
func (p *sheet) behind(o onward.Rest) {
	if len(p.it.Done) > 0 {
		p.line(p.say.Text("sheet.behind"))
		for _, d := range p.it.Done {
			does := fact.Each(d.Tasks, trip.Did.Says)
			if d.Night {
				does.List = append(does.List, fact.Term("sheet.behind.night"))
			}
			p.wrap("  [x] ", p.say.Text("sheet.behind.stop", fact.V{"date": d.Date.Says(), "mark": fact.Mark(d.Km-p.it.DoneKm, 0),
				"name": fact.Text(p.named(d.Name, d.Kind)), "id": fact.Text(d.Place), "does": does}))
		}
		p.wrap("  ", p.say.Text("sheet.behind.passed"))
		p.line("")
	}
	if len(o.Lessons)+len(o.Notes) > 0 {
		p.line(p.say.Text("sheet.learnt"))
		for _, l := range o.Lessons {
			p.wrap("  - ", strings.Join(p.say.Facts(l.Says), " "))
		}
		p.list("  - ", o.Notes)
		p.line("")
	}
}
