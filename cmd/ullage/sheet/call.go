package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"ullage/app/say"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/life/advice"
	"ullage/planner/trip"
)

// named is a place's name, or what kind of place it is.
func (p *sheet) named(name string, kind trip.PlaceKind) string {
	return cmp.Or(name, say.Capital(p.say.Place(string(kind))))
}

// call prints one stop: what to do there first, then what to know.
func (p *sheet) call(d trip.Day, c trip.Call) {
	const in = "         "
	p.line("")
	v := fact.V{"clock": p.clock(d, c.ArriveMin), "mark": fact.Mark(c.Km, 1), "name": fact.Text(p.named(c.Name, c.Kind)), "kind": c.Kind.Says(), "id": fact.Text(c.Place)}
	if v["name"].S == p.named("", c.Kind) {
		v["kind"] = fact.Value{}
	}
	p.line("  " + p.say.Text("sheet.call", v))
	p.acts(in, d, c)
	p.wrap(in, p.wayThere(c))
	p.wrap(in, p.say.Text("sheet.arrive", fact.V{"levels": fact.Text(p.levels(c.Arrive, everyTank))}))
	changed := func(s trip.Strip) bool {
		return p.say.Bare(c.Arrive[s.Tank], s.Unit) != p.say.Bare(c.Leave[s.Tank], s.Unit)
	}
	if levels := p.levels(c.Leave, changed); levels != "" {
		p.wrap(in, p.say.Text("sheet.leave", fact.V{"levels": fact.Text(levels)}))
	}
	if len(c.Facts) > 0 {
		p.wrap(in, p.say.Text("sheet.map_says", fact.V{"facts": p.joined(c.Facts)}))
	}
	if len(c.Fallback) > 0 {
		p.wrap(in, p.say.Text("sheet.if_closed", fact.V{"fallback": p.joined(c.Fallback)}))
	}
	p.cautions(in, c)
}

// acts prints what is to be done, in boxes to tick.
func (p *sheet) acts(in string, d trip.Day, c trip.Call) {
	for _, t := range c.Tasks {
		p.wrap(in+"[ ] ", p.task(d, c, t)+" "+p.pointed("sheet.act.notes", p.notesOf(c, ofAct(t.Tank))))
	}
	pay := fact.V{"pay": p.some(c.Cost)}
	if len(c.Tasks) == 1 && c.Tasks[0].Cost == c.Cost { // it stands there already
		pay["pay"] = fact.Value{}
	}
	if c.Night {
		p.wrap(in+"[ ] ", p.say.Text("sheet.stay", fact.V{"nights": fact.Count(max(c.Nights, 1))}, pay)+" "+p.pointed("sheet.act.notes", p.notesOf(c, ofNight)))
		return
	}
	p.line(in + "[ ] " + p.say.Text("sheet.go_on", fact.V{"clock": p.clock(d, c.LeaveMin)}, pay))
}

// ofAct are the cautions of what is done to a tank.
func ofAct(tank string) func(fact.Fact) bool {
	return func(f fact.Fact) bool { return advice.About(f, tank) }
}

// ofNight are those of a night.
func ofNight(f fact.Fact) bool { return advice.About(f, "night") || life.OfNight(f) }

// notesOf are the numbers of those of a call's cautions that are explained at the end.
func (p *sheet) notesOf(c trip.Call, about func(fact.Fact) bool) []int {
	var numbers []int
	for i, f := range p.notes {
		if about(f) && fact.Contains(c.Cautions, f) {
			numbers = append(numbers, i+1)
		}
	}
	return numbers
}

// pointed points to notes in the words of a key; nothing if there are none.
func (p *sheet) pointed(key string, numbers []int) string {
	if len(numbers) == 0 {
		return ""
	}
	return p.say.Text(key, fact.V{"n": fact.Count(len(numbers)), "numbers": fact.Each(numbers, func(n int) fact.Value { return fact.Text(strconv.Itoa(n)) })})
}

// wayThere says how far off the route a call is and where to turn in.
func (p *sheet) wayThere(c trip.Call) string {
	v := fact.V{"off": fact.Km(c.OffKm, 1), "km": fact.Km(c.DetourKm, 1), "time": fact.Span(c.DetourMin)}
	if c.OffKm < trip.BesideKm {
		v["off"] = fact.Value{}
	}
	way := p.say.Text("sheet.detour.about", v)
	switch {
	case c.OffKm < trip.BesideKm && c.DetourKm < 0.5, c.ByRoad && c.DetourKm < 0.5 && c.DetourMin < 1:
		way = p.say.Text("sheet.off", v)
	case c.ByRoad:
		way = p.say.Text("sheet.detour", v)
	}
	if e := c.Entry; e != nil {
		return way + " " + p.say.Text("sheet.entrance", fact.V{"road": fact.Text(e.Road), "point": at(e.Point)})
	}
	return way + " " + p.say.Text("sheet.at", fact.V{"point": at(c.Point)})
}

// at is a point as navigation devices read it.
func at(point [2]float64) fact.Value {
	return fact.Text(fmt.Sprintf("%.5f, %.5f", point[1], point[0]))
}

// cautions prints those of a call alone, and the numbers of those explained at
// the end to which none of its acts points.
func (p *sheet) cautions(in string, c trip.Call) {
	for _, f := range c.Cautions {
		if !fact.Contains(p.notes, f) {
			p.wrap(in, p.say.Text("sheet.care", fact.V{"what": fact.Clause(f)}))
		}
	}
	pointed := func(f fact.Fact) bool {
		return c.Night && ofNight(f) || slices.ContainsFunc(c.Tasks, func(t trip.Task) bool { return ofAct(t.Tank)(f) })
	}
	if numbers := p.notesOf(c, func(f fact.Fact) bool { return !pointed(f) }); len(numbers) > 0 {
		p.wrap(in, p.pointed("sheet.care.notes", numbers))
	}
}

// repeated lists the cautions that more than one call carries.
func repeated(it trip.Itinerary) []fact.Fact {
	count := map[string]int{}
	var out []fact.Fact
	for _, d := range it.Days {
		for _, c := range d.Calls {
			for _, f := range c.Cautions {
				if count[f.Key()]++; count[f.Key()] == 2 {
					out = append(out, f)
				}
			}
		}
	}
	return out
}
