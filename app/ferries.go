package page

import (
	"fmt"
	"math"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/geo"
	"ullage/planner/life/units"
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
		rows = append(rows, &FerryRow{Index: i, Words: fmt.Sprintf(say.ferryLine, f.Units.mark(x.FromKm), f.Units.mark(x.ToKm), span(x.Min))})
	}
	distance := f.Units.of(units.Distance).Symbol
	field := func(key, label, unit, hint string) *Control {
		key = ferryPrefix + key
		return &Control{Key: key, Label: label, Unit: unit, Hint: hint, Input: "number", Value: f.Typed[key], Wrong: f.Wrong[key]}
	}
	return app.FieldSet().ID("ferries").Body(
		app.Legend().Text(say.groupFerries),
		app.P().Class("help").Text(say.hFerries),
		app.Ul().Class("ferries").Body(rows...),
		app.Div().Class("fields").Body(
			field("from", say.fFerryFrom, distance, ""), field("to", say.fFerryTo, distance, ""), field("min", say.fFerryMin, "min", say.hFerryMin)),
		app.Button().ID("ferry-add").Type("button").Text(say.ferryAdd).OnClick(onFerryAdd),
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
		app.Button().Type("button").Class("quiet").Aria("label", say.ferryRemove+": "+r.Words).Text(say.ferryRemove).OnClick(r.onRemove))
}

func (r *FerryRow) onRemove(ctx app.Context, e app.Event) { send(ctx, FerryRemoved{r.Index}) }

// addFerry makes a ferry of what is typed, or says beside each field what is wrong.
func addFerry(m Model) Model {
	length := math.Inf(1)
	if line, err := geo.Measure(m.Trip.Route); err == nil {
		length = line.LengthM() / 1000
	}
	distance := m.Units.of(units.Distance)
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
		wrong("to", fmt.Sprintf(say.wantFerryEnd, m.Units.km(ferry.FromKm)))
		return m
	}
	var before, after []trip.Ferry
	for _, f := range m.Trip.Ferries {
		switch {
		case f.FromKm < ferry.ToKm && ferry.FromKm < f.ToKm:
			wrong("from", fmt.Sprintf(say.wantFerryApart, m.Units.mark(f.FromKm), m.Units.mark(f.ToKm)))
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
		out = append(out, app.Li().Body(&CrossingRow{Ferry: f, Units: d.Units}))
	}
	return out
}

// A CrossingRow is one ferry of the itinerary.
type CrossingRow struct {
	app.Compo
	Ferry trip.Crossing
	Units Units
}

func (r *CrossingRow) Render() app.UI {
	f := r.Ferry
	words := fmt.Sprintf(say.ferryTo, r.Units.mark(f.ToKm), span(f.Min))
	if f.Name != "" {
		words = fmt.Sprintf(say.ferryNamed, f.Name, r.Units.mark(f.ToKm), span(f.Min))
	}
	return app.Article().Class("crossing").Body(
		app.P().Body(app.B().Text(clock(f.StartMin)+" · "+words)),
		app.Ul().Body(lines(append([]string{capital(f.Basis)}, f.Mind...))...))
}
