package form

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/model"
	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Ferries lists the trip's own ferries, to remove them, and has the fields of one more.
type Ferries struct {
	app.Compo
	Say     say.Voice
	Ferries []trip.Ferry
	Form    model.Form
}

func (f *Ferries) Render() app.UI {
	var rows []app.UI
	for i, x := range f.Ferries {
		rows = append(rows, &FerryRow{Say: f.Say, Index: i, Words: f.Say.Text("ferry.line", fact.V{
			"from": fact.Mark(x.FromKm, -1), "to": fact.Mark(x.ToKm, -1), "time": fact.Span(x.Min)})})
	}
	field := func(name, label, unit string) *Control {
		key := model.FerryPrefix + name
		return &Control{Key: key, Label: label, Unit: unit, Input: "number", Value: f.Form.Typed[key], Wrong: f.Say.Fact(f.Form.Wrong[key])}
	}
	km := f.Say.Symbol("km")
	min := field("min", f.Say.Text("form.ferry_min"), "min")
	min.Hint = f.Say.Text("form.hint.ferry_min")
	return app.FieldSet().ID("ferries").Body(
		app.Legend().Text(f.Say.Text("ferry.title")),
		app.P().Class("help").Text(f.Say.Text("ferry.help")),
		app.Ul().Class("ferries").Body(rows...),
		app.Div().Class("fields").Body(field("from", f.Say.Text("form.ferry_from"), km), field("to", f.Say.Text("form.ferry_to"), km), min),
		app.Button().ID("ferry-add").Type("button").Text(f.Say.Text("ferry.add")).OnClick(onFerryAdd),
	)
}

func onFerryAdd(ctx app.Context, e app.Event) { show.Send(ctx, model.FerryAdded{}) }

// A FerryRow is one ferry of the trip.
type FerryRow struct {
	app.Compo
	Say   say.Voice
	Index int
	Words string
}

func (r *FerryRow) Render() app.UI {
	return app.Li().Body(app.Span().Text(r.Words+" "),
		app.Button().Type("button").Class("quiet").Text(r.Say.Text("ferry.remove")).
			Aria("label", r.Say.Text("ferry.remove_this", fact.V{"ferry": fact.Text(r.Words)})).OnClick(r.onRemove))
}

func (r *FerryRow) onRemove(ctx app.Context, e app.Event) {
	show.Send(ctx, model.FerryRemoved{Index: r.Index})
}
