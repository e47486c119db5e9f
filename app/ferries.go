package page

import (
	"fmt"
	"math"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/geo"
	"ullage/planner/trip"
)

// This file holds the ferries: those that a person names in the form, and
// those of a plan among the stops of its days.

// ferryPrefix begins the keys of the three fields of a ferry to be added.
const ferryPrefix = "ferry:"

// ferries lists the trip's own ferries, to remove them, and has the fields of one more.
func (f *TripForm) ferries() app.UI {
	var rows []app.UI
	for i, x := range f.Trip.Ferries {
		rows = append(rows, &FerryRow{Index: i, Words: fmt.Sprintf(word.ferryLine, f.Say.Mark(x.FromKm, -1), f.Say.Mark(x.ToKm, -1), f.Say.Span(x.Min))})
	}
	distance := f.Say.Unit("km").Symbol
	field := func(key, label, unit, hint string) *Control {
		key = ferryPrefix + key
		return &Control{Key: key, Label: label, Unit: unit, Hint: hint, Input: "number", Value: f.Typed[key], Wrong: f.Wrong[key]}
	}
	return app.FieldSet().ID("ferries").Body(
		app.Legend().Text(word.groupFerries),
		app.P().Class("help").Text(word.hFerries),
		app.Ul().Class("ferries").Body(rows...),
		app.Div().Class("fields").Body(
			field("from", word.fFerryFrom, distance, ""), field("to", word.fFerryTo, distance, ""), field("min", word.fFerryMin, "min", word.hFerryMin)),
		app.Button().ID("ferry-add").Type("button").Text(word.ferryAdd).OnClick(onFerryAdd),
	)
}

func onFerryAdd(ctx app.Context, e app.Event) { send(ctx, FerryAdded{}) }

// A FerryRow is one ferry of the trip.
type FerryRow struct {
	app.Compo
	Index int
	Words string
}

func (r *FerryRow) Render() app.UI {
	return app.Li().Body(app.Span().Text(r.Words+" "),
		app.Button().Type("button").Class("quiet").Aria("label", word.ferryRemove+": "+r.Words).Text(word.ferryRemove).OnClick(r.onRemove))
}

func (r *FerryRow) onRemove(ctx app.Context, e app.Event) { send(ctx, FerryRemoved{r.Index}) }

// addFerry makes a ferry of what is typed, or says beside each field what is wrong.
func addFerry(m Model) Model {
	length := math.Inf(1)
	if line, err := geo.Measure(m.Trip.Route); err == nil {
		length = line.LengthM() / 1000
	}
	distance := m.Say.Unit("km")
	fields := []string{"from", "to", "min"}
	values, ok := map[string]float64{}, true
	wrong := func(field, why string) { m.Wrong, ok = with(m.Wrong, ferryPrefix+field, why), false }
	for _, f := range fields {
		text := m.Typed[ferryPrefix+f]
		v, err := parseShown(text, distance, 0, length)
		if f == "min" {
			v, err = parseNumber(text, 0, 10_000)
		}
		if err != nil {
			wrong(f, err.Error())
		}
		values[f] = v
	}
	if !ok {
		return m
	}
	ferry := trip.Ferry{FromKm: values["from"], ToKm: values["to"], Min: values["min"]}
	if ferry.ToKm <= ferry.FromKm {
		wrong("to", fmt.Sprintf(word.wantFerryEnd, m.Say.Km(ferry.FromKm)))
		return m
	}
	var before, after []trip.Ferry
	for _, f := range m.Trip.Ferries {
		switch {
		case f.FromKm < ferry.ToKm && ferry.FromKm < f.ToKm:
			wrong("from", fmt.Sprintf(word.wantFerryApart, m.Say.Mark(f.FromKm, -1), m.Say.Mark(f.ToKm, -1)))
			return m
		case f.FromKm < ferry.FromKm:
			before = append(before, f)
		default:
			after = append(after, f)
		}
	}
	m.Trip.Ferries = append(append(before, ferry), after...)
	for _, f := range fields {
		m.Typed = with(m.Typed, ferryPrefix+f, "")
	}
	return ask(m)
}

// removeFerry takes the ferry at an index away.
func removeFerry(m Model, at int) Model {
	var rest []trip.Ferry
	for i, f := range m.Trip.Ferries {
		if i != at {
			rest = append(rest, f)
		}
	}
	m.Trip.Ferries = rest
	return ask(m)
}

// ferries are the crossings of a day between the stop before i and stop i.
func (d *Days) ferries(day trip.Day, i int) []app.UI {
	var out []app.UI
	for _, f := range day.Ferries {
		if i > 0 && day.Calls[i-1].ArriveMin > f.StartMin || i < len(day.Calls) && day.Calls[i].ArriveMin <= f.StartMin {
			continue
		}
		out = append(out, app.Li().Body(&CrossingRow{Ferry: f, Say: d.Say}))
	}
	return out
}

// A CrossingRow is one ferry of the itinerary.
type CrossingRow struct {
	app.Compo
	Ferry trip.Crossing
	Say   say.Voice
}

func (r *CrossingRow) Render() app.UI {
	f := r.Ferry
	words := fmt.Sprintf(word.ferryTo, r.Say.Mark(f.ToKm, -1), r.Say.Span(f.Min))
	if f.Name != "" {
		words = fmt.Sprintf(word.ferryNamed, f.Name, r.Say.Mark(f.ToKm, -1), r.Say.Span(f.Min))
	}
	return app.Article().Class("crossing").Body(
		app.P().Body(app.B().Text(r.Say.Clock(f.StartMin)+" · "+words)),
		app.Ul().Body(lines(append([]string{capital(f.Basis)}, r.Say.Facts(f.Mind)...))...))
}
