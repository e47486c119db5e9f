package sheet

import (
	"strings"

	"ullage/planner/fact"
	"ullage/planner/trip"
)

// end prints the levels at the end of the route, as planned and as expected.
func (p *sheet) end() {
	if len(p.it.Strips) == 0 {
		return
	}
	end := trip.Levels{}
	var likely []string
	for _, s := range p.it.Strips {
		last := s.Points[len(s.Points)-1]
		end[s.Tank] = last.L
		if p.say.Shown(last.High-last.Low, s.Unit) >= 0.5 {
			likely = append(likely, p.say.Text("sheet.end.band", fact.V{"tank": fact.Tank(s.Tank, s.Name), "likely": fact.Quantity(last.Likely, s.Unit, -1),
				"low": fact.Quantity(last.Low, s.Unit, -1), "high": fact.Quantity(last.High, s.Unit, -1)}))
		}
	}
	p.wrap("", p.say.Text("sheet.end", fact.V{"levels": fact.Text(p.levels(end, everyTank))}))
	if len(likely) > 0 {
		p.wrap("", p.say.Text("sheet.end.likely", p.trips(), fact.V{"levels": fact.Text(strings.Join(likely, ", "))}))
	}
	p.line("")
}

// trips is of how many trips in a hundred the plan is safe.
func (p *sheet) trips() fact.V { return fact.V{"trips": fact.Count(int(100*p.it.Confidence + 0.5))} }

// handBack prints the last morning.
func (p *sheet) handBack() {
	r := p.it.Return
	if r == nil {
		return
	}
	p.line(p.say.Text("sheet.return", fact.V{"date": r.Date.Says()}))
	p.list("  [ ] ", r.Steps)
	if len(r.Station) > 0 {
		p.wrap("  ", p.say.Text("sheet.return.station", fact.V{"station": p.joined(r.Station)}))
	}
	if len(r.Agreed) > 0 {
		p.wrap("  ", p.say.Text("sheet.return.agreed", fact.V{"levels": p.joined(r.Agreed)}))
	}
	p.list("  ! ", r.Warnings)
	p.line("")
}
