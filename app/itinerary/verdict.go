package itinerary

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/browser"
	"ullage/app/draw"
	"ullage/app/model"
	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// A Verdict is the plan in one line and what it costs.
type Verdict struct {
	app.Compo
	Say  say.Voice
	Trip trip.Trip
	Plan trip.Itinerary
	Kept bool // a cheaper plan may have other stops than the plan in use
}

func (v *Verdict) Render() app.UI {
	p := v.Plan
	return app.Div().Class("verdict").Body(
		app.P().Class("count").Text(strings.Join([]string{
			v.Say.Text("verdict.days", fact.V{"n": fact.Count(len(p.Days))}),
			v.Say.Km(p.LengthKm),
			v.Say.Text("verdict.stops", fact.V{"n": fact.Count(len(draw.Numbers(p.Days)))}),
			v.Say.Text("verdict.pay", fact.V{"sum": fact.Money(p.Cost-p.Parts.Time, p.Currency)}),
		}, " · ")),
		v.scales(),
		app.Details().Class("cost").Body(
			app.Summary().Text(v.Say.Text("cost.title")),
			app.Dl().Body(v.parts()...),
		),
		app.Button().Type("button").Class("quiet").Text(v.Say.Text("verdict.gpx")).OnClick(v.onGPX),
		app.If(v.Kept, func() app.UI {
			return app.Button().Type("button").Class("quiet").Text(v.Say.Text("verdict.afresh")).OnClick(v.onAfresh)
		}),
	)
}

func (v *Verdict) onAfresh(ctx app.Context, e app.Event) { show.Send(ctx, model.Afresh{}) }

func (v *Verdict) onGPX(ctx app.Context, e app.Event) {
	if err := browser.Download(browser.FileName(v.Trip.Name)+".gpx", "application/gpx+xml", StopsGPX(v.Say, v.Trip, v.Plan)); err != nil {
		show.Send(ctx, model.NotSaved{Why: err.Error()})
	}
}

// scales says what the vehicle weighs as it sets off, and warns.
func (v *Verdict) scales() app.UI {
	w := v.Plan.Weight
	return app.If(w != nil, func() app.UI {
		return app.Div().Class("weight").Body(
			app.P().Text(v.Say.Text("verdict.weight", fact.V{"kg": fact.Kg(w.Kg), "allowed": fact.Kg(w.AllowedKg)})),
			show.Text("trouble", v.Say.Fact(w.Says)),
		)
	})
}

// parts lists what the cost is made of; what is nothing is left out.
func (v *Verdict) parts() []app.UI {
	p := v.Plan
	var out []app.UI
	for _, part := range []struct {
		words string
		sum   float64
	}{
		{v.Say.Text("cost.goods"), p.Parts.Goods},
		{v.Say.Text("cost.fees"), p.Parts.Fees},
		{v.Say.Text("cost.nights"), p.Parts.Nights},
		{v.Say.Text("cost.refill"), p.Parts.Refill},
		{v.Say.Text("cost.pay"), p.Cost - p.Parts.Time},
		{v.Say.Text("cost.time"), p.Parts.Time},
		{v.Say.Text("cost.all"), p.Cost},
	} {
		if part.sum > 0.004 {
			out = append(out, app.Div().Body(app.Dt().Text(part.words), app.Dd().Text(v.Say.Money(part.sum, p.Currency))))
		}
	}
	return out
}
