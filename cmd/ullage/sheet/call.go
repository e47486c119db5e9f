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

const (
	littleMin = 15  // minutes in hand that nobody needs to be told
	nearlyKg  = 100 // left below the plate: the number stands on the sheet
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
	p.wrap(in, p.say.Text("sheet.here", fact.V{"why": fact.Clause(c.Here)}))
	if c.InHandMin >= littleMin {
		p.wrap(in, p.say.Text("sheet.in_hand", fact.V{"for": fact.Span(c.InHandMin)}))
	}
	p.acts(in, d, c)
	p.wrap(in, p.wayThere(c))
	p.wrap(in, p.say.Text("sheet.arrive", fact.V{"levels": fact.Text(p.levels(c.Arrive, everyTank))}))
	changed := func(s trip.Strip) bool {
		return p.say.Bare(c.Arrive[s.Tank], s.Unit) != p.say.Bare(c.Leave[s.Tank], s.Unit)
	}
	if levels := p.levels(c.Leave, changed); levels != "" {
		p.wrap(in, p.say.Text("sheet.leave", fact.V{"levels": fact.Text(levels)}))
	}
	if w := p.it.Weight; w != nil && w.AllowedKg-c.LeaveKg < nearlyKg {
		p.wrap(in, p.say.Text("sheet.kg", fact.V{"kg": fact.Kg(c.LeaveKg), "left": fact.Kg(w.AllowedKg - c.LeaveKg)}))
	}
	for _, n := range c.Notes {
		p.wrap(in, p.say.Text("sheet.note", fact.V{"date": n.When.Says(), "who": fact.Text(n.Who), "text": fact.Text(n.Text)}))
	}
	if c.Contact != (trip.Contact{}) {
		p.wrap(in, p.say.Text("sheet.contact", fact.V{"list": fact.Texts(c.Contact.All())}))
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
		if t.Night == 0 {
			p.wrap(in+"[ ] ", p.task(d, c, t)+" "+p.pointed(p.notesOf(c, ofAct(t.Tank))))
		}
	}
	pay := fact.V{"pay": p.some(c.Cost)}
	if len(c.Tasks) == 1 && c.Tasks[0].Cost == c.Cost { // it stands there already
		pay["pay"] = fact.Value{}
	}
	if c.Night {
		p.wrap(in+"[ ] ", p.say.Text("sheet.stay", fact.V{"nights": fact.Count(max(c.Nights, 1))}, pay)+" "+p.pointed(p.notesOf(c, ofStay(c))))
		return
	}
	p.line(in + "[ ] " + p.say.Text("sheet.go_on", fact.V{"clock": p.clock(d, c.LeaveMin)}, pay))
}

// ofAct are the cautions of what is done to a tank.
func ofAct(tank string) func(fact.Fact) bool {
	return func(f fact.Fact) bool { return advice.About(f, tank) }
}

// ofStay are those of a night, and of plugging in where that charges nothing.
func ofStay(c trip.Call) func(fact.Fact) bool {
	return func(f fact.Fact) bool {
		return c.Night && !ofSomeTask(c, f) && (life.OfNight(f) || slices.ContainsFunc(c.HowTo, func(id string) bool { return advice.About(f, id) }))
	}
}

func ofSomeTask(c trip.Call, f fact.Fact) bool {
	return slices.ContainsFunc(c.Tasks, func(t trip.Task) bool { return ofAct(t.Tank)(f) })
}

func ofSomeAct(c trip.Call, f fact.Fact) bool { return ofSomeTask(c, f) || ofStay(c)(f) }

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

// pointed points to notes; nothing if there are none.
func (p *sheet) pointed(numbers []int) string {
	if len(numbers) == 0 {
		return ""
	}
	return p.say.Text("sheet.act.notes", fact.V{"n": fact.Count(len(numbers)), "numbers": fact.Each(numbers, func(n int) fact.Value { return fact.Text(strconv.Itoa(n)) })})
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

// cautions prints those of a call that are no notes.
func (p *sheet) cautions(in string, c trip.Call) {
	for _, f := range c.Cautions {
		if !fact.Contains(p.notes, f) {
			p.wrap(in, p.say.Text("sheet.care", fact.V{"what": fact.Clause(f)}))
		}
	}
}

// repeated lists the cautions of what is done at more than one call, in the order
// of the sheet. What is doubtful about a place is said there, though another place
// has the same doubt.
func repeated(it trip.Itinerary) []fact.Fact {
	count := map[string]int{}
	var out []fact.Fact
	for _, d := range it.Days {
		for _, c := range d.Calls {
			for _, f := range c.Cautions {
				if !ofSomeAct(c, f) {
					continue
				}
				if count[f.Key()]++; count[f.Key()] == 1 {
					out = append(out, f)
				}
			}
		}
	}
	return slices.DeleteFunc(out, func(f fact.Fact) bool { return count[f.Key()] < 2 })
}
