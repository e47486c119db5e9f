package sheet

import (
	"fmt"
	"strings"

	"ullage/planner/trip"
)

// road prints what is behind and what the gauges taught.
func (p *sheet) road(o trip.Onward) {
	if len(p.it.Done) > 0 {
		p.line("Behind you")
		for _, d := range p.it.Done {
			does := d.Tasks
			if d.Night {
				does = append(does[:len(does):len(does)], "night")
			}
			p.wrap("  [x] ", fmt.Sprintf("%s, %s %s (%s): %s", p.say.Date(d.Date), p.say.Mark(d.Km, 0), d.Name, d.Place, strings.Join(does, ", ")))
		}
		p.wrap("  ", "Stops behind count as called at. Passed one without a call: plan again with -passed and its id.")
		p.line("")
	}
	if len(o.Lessons)+len(o.Notes) > 0 {
		p.line("From the gauges and the clock")
		for _, l := range o.Lessons {
			p.wrap("  - ", p.prose(l.Text))
		}
		for _, n := range o.Notes {
			p.wrap("  - ", p.prose(n))
		}
		p.line("")
	}
}
