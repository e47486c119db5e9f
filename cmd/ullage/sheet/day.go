package sheet

import (
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
)

func (p *sheet) day(d trip.Day) {
	p.title(p.say.Text("sheet.day", fact.V{"n": fact.Count(d.Number), "date": d.Date.Says(), "from": fact.Mark(d.FromKm, 0),
		"to": fact.Mark(d.ToKm, 0)}), "-", textWidth)
	if d.ToKm <= d.FromKm && len(d.Calls) == 0 {
		p.line("  " + p.say.Text("sheet.rest"))
		p.due(d)
		p.line("")
		return
	}
	p.due(d)
	p.wrap("  ", p.say.Text("sheet.drive", fact.V{"start": p.clock(d, d.StartMin), "end": p.clock(d, d.EndMin), "km": fact.Km(d.DriveKm, 0), "time": fact.Span(d.DriveMin)}))
	if d.Breaks > 0 {
		p.wrap("  ", p.say.Text("sheet.breaks", fact.V{"n": fact.Count(d.Breaks), "for": fact.Span(life.BreakMin)}))
	}
	at := 0
	for _, f := range d.Ferries {
		for ; at < len(d.Calls) && d.Calls[at].ArriveMin <= f.StartMin; at++ {
			p.call(d, d.Calls[at])
		}
		p.ferry(d, f)
	}
	for _, c := range d.Calls[at:] {
		p.call(d, c)
	}
	p.line("")
}

func (p *sheet) ferry(d trip.Day, f trip.Crossing) {
	p.line("")
	p.line("  " + p.say.Text("sheet.ferry", fact.V{"clock": p.clock(d, f.StartMin), "from": fact.Mark(f.FromKm, 1), "to": fact.Mark(f.ToKm, 1), "name": fact.Text(f.Name)}))
	p.wrap("         ", p.say.Text("sheet.ferry.time", fact.V{"for": fact.Span(f.Min), "basis": fact.Clause(f.Basis), "end": p.clock(d, f.StartMin+f.Min)}))
	for _, mind := range f.Mind {
		p.wrap("         [ ] ", p.say.Fact(mind))
	}
}

// due prints what is done on a later day of a stay, in boxes to tick.
func (p *sheet) due(d trip.Day) {
	for _, x := range d.Due {
		kind := "sheet.due"
		if x.Leaving {
			kind = "sheet.due.leaving"
		}
		p.line("  " + p.say.Text(kind, fact.V{"name": fact.Text(p.named(x.Name, x.Kind))}))
		arrived, c := p.stay(x.Stop)
		for _, t := range x.Tasks {
			p.wrap("         [ ] ", p.task(arrived, c, t)+" "+p.pointed(p.notesOf(c, ofAct(t.Tank))))
		}
	}
}

// stay is the call of a stop, and the day of arriving there.
func (p *sheet) stay(stop string) (trip.Day, trip.Call) {
	for _, d := range p.it.Days {
		for _, c := range d.Calls {
			if c.Stop == stop {
				return d, c
			}
		}
	}
	return trip.Day{}, trip.Call{}
}
