package page

import (
	"fmt"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
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
	Say   say.Voice

	Planned bool // there is a plan to go on from
	Road    bool // the panel of the road is open
}

func (f *TripForm) Render() app.UI {
	label := word.change
	if f.Open {
		label = word.done
	}
	return app.Section().ID("trip").Class("trip").Aria("labelledby", "trip-title").Body(
		app.H2().ID("trip-title").Class("name").Text(tripName(f.Trip)),
		app.P().Class("sum").Text(strings.Join(summary(f.Trip, f.Say), " ")),
		app.Div().Class("acts").Body(
			app.Button().ID("change").Type("button").Aria("expanded", fmt.Sprint(f.Open)).Text(label).OnClick(f.onToggle),
			app.Button().ID("onroad").Type("button").Aria("expanded", fmt.Sprint(f.Road)).Text(word.roadTitle).Disabled(!f.Planned).OnClick(onRoad),
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
	for _, field := range fieldsOf(f.Trip, f.Fleet, f.Say) {
		if field.Group != last {
			flush()
			last = field.Group
		}
		value, typed := f.Typed[field.Key]
		if !typed {
			value = field.Get(f.Trip)
		}
		fields = append(fields, &Control{
			Key: field.Key, Label: field.Label, Unit: field.Unit, Hint: prose(f.Say, field.Hint), Input: field.Input,
			Options: field.Options, Wide: field.Wide, Value: value, Wrong: f.Wrong[field.Key],
		})
	}
	flush()
	groups = append(groups, f.ferries())
	return app.Form().ID("form").Class("form").Aria("labelledby", "trip-title").OnSubmit(f.onSubmit).Body(
		append([]app.UI{app.P().Class("help").Text(word.editHelp)}, groups...)...)
}

// onSubmit keeps the Enter key from leaving the page.
func (f *TripForm) onSubmit(ctx app.Context, e app.Event) { e.PreventDefault() }

func tripName(t trip.Trip) string {
	if t.Name != "" {
		return t.Name
	}
	return word.tripTitle
}

// summary says the trip in a few sentences.
func summary(t trip.Trip, v say.Voice) []string {
	people := count(t.Party.Adults, word.adults)
	if t.Party.Children > 0 {
		people += " and " + count(t.Party.Children, word.children)
	}
	vehicle, _, _ := strings.Cut(t.Vehicle.Name, ",")
	out := []string{
		fmt.Sprintf(word.sumPeople, people, vehicle, v.Date(t.Start)),
		fmt.Sprintf(word.sumDay, v.Km(t.Day.MaxKm), v.Span(t.Day.MaxMin), v.Clock(t.Day.DepartMin)),
	}
	switch s := t.Stays; {
	case s.MaxNights == 0 && s.MinNights == 0:
		out = append(out, word.sumAny)
	case s.MaxNights == s.MinNights:
		out = append(out, capital(count(s.MinNights, word.nightsWord))+".")
	case s.MaxNights == 0:
		out = append(out, word.fMinNights+" "+count(s.MinNights, word.nightsWord)+".")
	default:
		out = append(out, fmt.Sprintf(word.sumNights, plain(float64(s.MinNights)), count(s.MaxNights, word.nightsWord))+".")
	}
	return out
}
