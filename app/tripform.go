package page

import (
	"fmt"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/planner/trip"
)

// A TripForm says in words who drives what, when and how, and opens to change
// it. A change is planned at once: there is no button to send it.
type TripForm struct {
	app.Compo
	Trip  trip.Trip
	Fleet []trip.Vehicle
	Typed map[string]string
	Wrong map[string]string
	Open  bool
	Units Units

	Planned bool // there is a plan to go on from
	Road    bool // the panel of the road is open
}

func (f *TripForm) Render() app.UI {
	label := say.change
	if f.Open {
		label = say.done
	}
	return app.Section().ID("trip").Class("trip").Aria("labelledby", "trip-title").Body(
		app.H2().ID("trip-title").Class("name").Text(tripName(f.Trip)),
		app.P().Class("sum").Text(strings.Join(summary(f.Trip, f.Units), " ")),
		app.Div().Class("acts").Body(
			app.Button().ID("change").Type("button").Aria("expanded", fmt.Sprint(f.Open)).Text(label).OnClick(f.onToggle),
			app.Button().ID("onroad").Type("button").Aria("expanded", fmt.Sprint(f.Road)).Text(say.roadTitle).Disabled(!f.Planned).OnClick(onRoad),
		),
		app.If(f.Open, f.form),
	)
}

func (f *TripForm) onToggle(ctx app.Context, e app.Event) { send(ctx, FormToggled{}) }

func (f *TripForm) form() app.UI {
	var groups []app.UI
	var fields []app.UI
	last := ""
	flush := func() {
		if last != "" {
			groups = append(groups, group(last, fields))
		}
		fields = nil
	}
	for _, field := range fieldsOf(f.Trip, f.Fleet, f.Units) {
		if field.Group != last {
			flush()
			last = field.Group
		}
		value, typed := f.Typed[field.Key]
		if !typed {
			value = field.Get(f.Trip)
		}
		fields = append(fields, &Control{
			Key: field.Key, Label: field.Label, Unit: field.Unit, Hint: f.Units.prose(field.Hint), Input: field.Input,
			Options: field.Options, Wide: field.Wide, Value: value, Wrong: f.Wrong[field.Key],
		})
	}
	flush()
	groups = append(groups, f.ferries())
	return app.Form().ID("form").Class("form").Aria("labelledby", "trip-title").OnSubmit(f.onSubmit).Body(
		append([]app.UI{app.P().Class("help").Text(say.editHelp)}, groups...)...)
}

// onSubmit keeps the Enter key from leaving the page.
func (f *TripForm) onSubmit(ctx app.Context, e app.Event) { e.PreventDefault() }

func tripName(t trip.Trip) string {
	if t.Name != "" {
		return t.Name
	}
	return say.tripTitle
}

// summary says the trip in a few sentences.
func summary(t trip.Trip, u Units) []string {
	people := count(t.Party.Adults, say.adults)
	if t.Party.Children > 0 {
		people += " and " + count(t.Party.Children, say.children)
	}
	vehicle, _, _ := strings.Cut(t.Vehicle.Name, ",")
	out := []string{
		fmt.Sprintf(say.sumPeople, people, vehicle, date(t.Start)),
		fmt.Sprintf(say.sumDay, u.km(t.Day.MaxKm), span(t.Day.MaxMin), clock(t.Day.DepartMin)),
	}
	switch s := t.Stays; {
	case s.MaxNights == 0 && s.MinNights == 0:
		out = append(out, say.sumAny)
	case s.MaxNights == s.MinNights:
		out = append(out, capital(count(s.MinNights, say.nightsWord))+".")
	case s.MaxNights == 0:
		out = append(out, say.fMinNights+" "+count(s.MinNights, say.nightsWord)+".")
	default:
		out = append(out, fmt.Sprintf(say.sumNights, plain(float64(s.MinNights)), count(s.MaxNights, say.nightsWord))+".")
	}
	return out
}
