package form

import (
	"fmt"
	"strings"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/field"
	"ullage/app/model"
	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// A TripForm says in words who drives what, when and how, and opens to change
// it. A change is planned at once: there is no button to send it.
type TripForm struct {
	app.Compo
	Say   say.Voice
	Trip  trip.Trip
	Fleet []trip.Vehicle
	Form  model.Form

	Planned bool // there is a plan to go on from
	Road    bool // the panel of the road is open
}

func (f *TripForm) Render() app.UI {
	label := f.Say.Text("trip.change")
	if f.Form.Editing {
		label = f.Say.Text("trip.done")
	}
	name := f.Trip.Name
	if name == "" {
		name = f.Say.Text("trip.title")
	}
	return app.Section().ID("trip").Class("trip").Aria("labelledby", "trip-title").Body(
		app.H2().ID("trip-title").Class("name").Text(name),
		app.P().Class("sum").Text(strings.Join(summary(f.Say, f.Trip), " ")),
		app.Div().Class("acts").Body(
			app.Button().ID("change").Type("button").Aria("expanded", fmt.Sprint(f.Form.Editing)).Text(label).OnClick(f.onToggle),
			app.Button().ID("onroad").Type("button").Aria("expanded", fmt.Sprint(f.Road)).Text(f.Say.Text("onroad.title")).Disabled(!f.Planned).OnClick(f.onRoad),
		),
		app.If(f.Form.Editing, f.form),
	)
}

func (f *TripForm) onToggle(ctx app.Context, e app.Event) { show.Send(ctx, model.FormToggled{}) }

// onRoad opens or shuts the panel of the road, with the time of this machine.
func (f *TripForm) onRoad(ctx app.Context, e app.Event) {
	show.Send(ctx, model.ReportToggled{Now: time.Now().Format(model.NowLayout)})
}

func (f *TripForm) form() app.UI {
	body := []app.UI{app.P().Class("help").Text(f.Say.Text("trip.help"))}
	all := field.Of(f.Trip, f.Fleet, f.Say)
	for len(all) > 0 {
		n := 1
		for n < len(all) && all[n].Group == all[0].Group {
			n++
		}
		var controls []app.UI
		for _, x := range all[:n] {
			controls = append(controls, f.control(x))
		}
		body = append(body, group(f.Say.Text("group."+all[0].Group), controls))
		all = all[n:]
	}
	body = append(body, &Ferries{Say: f.Say, Ferries: f.Trip.Ferries, Form: f.Form})
	return app.Form().ID("form").Class("form").Aria("labelledby", "trip-title").OnSubmit(f.onSubmit).Body(body...)
}

// control is a field with its words, and with what is typed in it.
func (f *TripForm) control(x field.Field) *Control {
	values := fact.V{"low": fact.Celsius(life.HotEnough)}
	if x.Tank != nil {
		values["tank"] = fact.Tank(x.Tank.ID, x.Tank.Name)
	}
	c := &Control{Key: x.Key, Label: f.Say.Text("form."+x.Words(), values), Unit: x.Unit, Input: x.Input, Options: x.Options, Wide: x.Wide, Wrong: f.Say.Fact(f.Form.Wrong[x.Key])}
	if hint := "form.hint." + x.Words(); f.Say.Has(hint) {
		c.Hint = f.Say.Text(hint, values)
	}
	var typed bool
	if c.Value, typed = f.Form.Typed[x.Key]; !typed {
		c.Value = x.Get(f.Trip)
	}
	return c
}

// onSubmit keeps the Enter key from leaving the page.
func (f *TripForm) onSubmit(ctx app.Context, e app.Event) { e.PreventDefault() }

// summary says the trip in a few sentences.
func summary(v say.Voice, t trip.Trip) []string {
	vehicle, _, _ := strings.Cut(t.Vehicle.Name, ",")
	return []string{
		v.Text("trip.people", fact.V{"adults": fact.Count(t.Party.Adults), "children": fact.Count(t.Party.Children), "vehicle": fact.Text(vehicle), "date": t.Start.Says()}),
		v.Text("trip.day", fact.V{"km": fact.Km(t.Day.MaxKm, -1), "time": fact.Span(t.Day.MaxMin), "depart": fact.Clock(t.Day.DepartMin)}),
		nights(v, t.Stays),
	}
}

func nights(v say.Voice, s trip.StayWishes) string {
	switch {
	case s.MaxNights == 0 && s.MinNights == 0:
		return v.Text("trip.nights_any")
	case s.MaxNights == s.MinNights:
		return v.Text("trip.nights", fact.V{"n": fact.Count(s.MinNights)})
	case s.MaxNights == 0:
		return v.Text("trip.nights_least", fact.V{"n": fact.Count(s.MinNights)})
	}
	return v.Text("trip.nights_range", fact.V{"least": fact.Count(s.MinNights), "n": fact.Count(s.MaxNights)})
}
