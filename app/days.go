package page

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/draw"
	"ullage/app/say"
	"ullage/planner/trip"
)

// Days is the itinerary: what to do, day by day, in words.
type Days struct {
	app.Compo
	Plan  trip.Itinerary
	Avoid []string
	Now   int // number of the stop at the cursor; 0 is none
	Ticks []string
	Say   say.Voice
}

func (d *Days) Render() app.UI {
	body := []app.UI{app.H2().ID("itinerary-title").Text(word.daysTitle)}
	if len(d.Plan.Done) > 0 {
		body = append(body, d.done())
	}
	if len(d.Plan.Days) == 0 {
		body = append(body, text("help", word.noDays))
	}
	n, known := 0, map[string]bool{}
	next := d.next()
	for _, day := range d.Plan.Days {
		body = append(body, d.day(day, n, next, known))
		n += len(day.Calls)
	}
	body = append(body, d.leftOut()...)
	return app.Section().ID("itinerary").Class("days").TabIndex(-1).Aria("labelledby", "itinerary-title").Body(body...)
}

// done lists the stops that are behind.
func (d *Days) done() app.UI {
	var lis []app.UI
	for _, s := range d.Plan.Done {
		does := slices.Clone(s.Tasks)
		if s.Night {
			does = append(does, word.night)
		}
		lis = append(lis, app.Li().Body(app.Span().Class("tick").Text("✓ "),
			app.Text(strings.Join([]string{d.Say.ShortDate(s.Date), cmp.Or(s.Name, s.Place), d.Say.Mark(s.Km, -1), strings.Join(does, ", ")}, " · "))))
	}
	return app.Section().ID("behind").Class("behind").Aria("labelledby", "behind-title").Body(
		app.H3().ID("behind-title").Text(word.behind), app.Ul().Body(lis...))
}

// next is the number of the first stop that is not ticked off after one that
// is; 0: nobody ticks.
func (d *Days) next() (n int) {
	m := Model{Ticks: d.Ticks}
	for i, c := range callsOf(d.Plan) {
		if m.ticked(c) {
			n = i + 2
		}
	}
	return n
}

// day shows one day. before counts the stops of earlier days, next is the
// number of the next one, known holds their cautions and gets this day's.
func (d *Days) day(day trip.Day, before, next int, known map[string]bool) app.UI {
	var calls []app.UI
	for i, c := range day.Calls {
		calls = append(calls, d.ferries(day, i)...)
		calls = append(calls, app.Li().Body(&CallRow{
			Call: c, N: before + i + 1, Current: before+i+1 == d.Now, Made: Model{Ticks: d.Ticks}.ticked(c), Next: before+i+1 == next, Known: maps.Clone(known),
			Strips: d.Plan.Strips, Currency: d.Plan.Currency, Say: d.Say,
		}))
		for _, c := range c.Cautions {
			known[c] = true
		}
	}
	calls = append(calls, d.ferries(day, len(day.Calls))...)
	return app.Section().Class("day").Body(
		app.Header().Body(
			app.H3().Body(
				app.Span().Class("nth").Text(fmt.Sprintf(word.day, day.Number)),
				app.Text(" "+d.Say.Date(day.Date)),
			),
			app.P().Text(fmt.Sprintf(word.dayLine, d.Say.Km(day.DriveKm), d.Say.Span(day.DriveMin), d.Say.Clock(day.StartMin), d.Say.Clock(day.EndMin))),
		),
		app.Ol().Class("calls").Body(calls...),
		app.If(day.Number == len(d.Plan.Days), func() app.UI {
			return app.P().Class("end").Text(d.Say.Clock(day.EndMin) + " " + word.toEnd)
		}),
	)
}

// leftOut lists the places that the person does not want, to take them back.
func (d *Days) leftOut() []app.UI {
	var out []app.UI
	for _, id := range d.Avoid {
		name := id
		for _, p := range d.Plan.Places {
			if p.Place == id && p.Name != "" {
				name = p.Name
			}
		}
		out = append(out, &AvoidButton{Place: id, Label: fmt.Sprintf(word.avoidAgain, name)})
	}
	return out
}

// stopAt returns the number of the last stop that the cursor has reached; 0
// before the first.
func stopAt(it trip.Itinerary, min float64) (n int) {
	for _, s := range draw.Numbers(it.Days) {
		if s.Call.ArriveMin <= min {
			n = s.N
		}
	}
	return n
}
