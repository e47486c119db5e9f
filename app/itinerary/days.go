package itinerary

import (
	"cmp"
	"maps"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/draw"
	"ullage/app/model"
	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Days is the itinerary: what to do, day by day, in words.
type Days struct {
	app.Compo
	Say   say.Voice
	Plan  trip.Itinerary
	Avoid []string
	Now   int // number of the stop at the cursor; 0 is none
	Ticks []string
}

func (d *Days) Render() app.UI {
	body := []app.UI{app.H2().ID("itinerary-title").Text(d.Say.Text("days.title"))}
	if len(d.Plan.Done) > 0 {
		body = append(body, d.done())
	}
	if len(d.Plan.Days) == 0 {
		body = append(body, show.Text("help", d.Say.Text("days.none")))
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
		var does []string
		for _, t := range s.Tasks {
			does = append(does, d.Say.Value(t.Says()))
		}
		if s.Night {
			does = append(does, show.Nights(d.Say, 1))
		}
		lis = append(lis, app.Li().Body(app.Span().Class("tick").Text("✓ "),
			app.Text(strings.Join([]string{d.Say.ShortDate(string(s.Date)), cmp.Or(s.Name, s.Place), d.Say.Mark(s.Km-d.Plan.DoneKm, -1), strings.Join(does, ", ")}, " · "))))
	}
	return app.Section().ID("behind").Class("behind").Aria("labelledby", "behind-title").Body(
		app.H3().ID("behind-title").Text(d.Say.Text("days.behind")), app.Ul().Body(lis...))
}

// next is the number of the first stop that is not ticked off after one that
// is; 0: nobody ticks.
func (d *Days) next() (n int) {
	for _, c := range draw.Numbers(d.Plan.Days) {
		if d.ticked(c.Call) {
			n = c.N + 1
		}
	}
	return n
}

func (d *Days) ticked(c trip.Call) bool { return model.Kept{Ticks: d.Ticks}.Ticked(c) }

// day shows one day. before counts the stops of earlier days, next is the
// number of the next one, known holds their cautions and gets this day's.
func (d *Days) day(day trip.Day, before, next int, known map[string]bool) app.UI {
	var calls []app.UI
	numbers := draw.Numbers(d.Plan.Days)
	for i, c := range day.Calls {
		n := numbers[before+i].N
		calls = append(calls, crossings(d.Say, day, i)...)
		calls = append(calls, app.Li().Body(&CallRow{
			Say: d.Say, Call: c, N: n, Current: n == d.Now, Made: d.ticked(c), Next: n == next, Known: maps.Clone(known),
			Strips: d.Plan.Strips, Currency: d.Plan.Currency,
		}))
		for _, c := range c.Cautions {
			known[c.Key()] = true
		}
	}
	calls = append(calls, crossings(d.Say, day, len(day.Calls))...)
	return app.Section().Class("day").Body(
		app.Header().Body(
			app.H3().Body(
				app.Span().Class("nth").Text(d.Say.Text("days.day", fact.V{"n": fact.Count(day.Number)})),
				app.Text(" "+d.Say.Date(string(day.Date))),
			),
			app.P().Text(d.Say.Text("days.line", fact.V{
				"km": fact.Km(day.DriveKm, -1), "driving": fact.Span(day.DriveMin), "begin": fact.Clock(day.StartMin), "end": fact.Clock(day.EndMin)})),
		),
		app.Ol().Class("calls").Body(calls...),
		app.If(day.Number == len(d.Plan.Days), func() app.UI {
			return app.P().Class("end").Text(d.Say.Text("days.end", fact.V{"time": fact.Clock(day.EndMin)}))
		}),
	)
}

// leftOut lists the places that the person does not want, to take them back.
func (d *Days) leftOut() []app.UI {
	var out []app.UI
	for _, id := range d.Avoid {
		out = append(out, &AvoidButton{Place: id, Label: d.Say.Text("days.left_out", fact.V{"place": fact.Text(placeName(d.Plan, id))})})
	}
	return out
}

// placeName is what a place of the corridor is called.
func placeName(it trip.Itinerary, place string) string {
	for _, c := range it.Places {
		if c.Place == place && c.Name != "" {
			return c.Name
		}
	}
	return place
}
