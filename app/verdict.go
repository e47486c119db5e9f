package page

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/browser"
	"ullage/app/draw"
	"ullage/planner/trip"
)

// A Verdict is the plan in one line and what it costs.
type Verdict struct {
	app.Compo
	Trip  trip.Trip
	Plan  trip.Itinerary
	Units Units
	Kept  bool // a cheaper plan may have other stops than the plan in use
}

func (v *Verdict) Render() app.UI {
	p := v.Plan
	return app.Div().Class("verdict").Body(
		app.P().Class("count").Text(strings.Join([]string{
			count(len(p.Days), say.days),
			v.Units.km(p.LengthKm),
			count(len(draw.Numbers(p.Days)), say.calls),
			money(p.Cost-p.Parts.Time, p.Currency) + " " + say.paid,
		}, " · ")),
		scales(p.Weight, v.Units),
		app.Details().Class("cost").Body(
			app.Summary().Text(say.costTitle),
			app.Dl().Body(v.parts()...),
		),
		app.Button().Type("button").Class("quiet").Text(say.gpx).OnClick(v.onGPX),
		app.If(v.Kept, func() app.UI {
			return app.Button().Type("button").Class("quiet").Text(say.afresh).OnClick(v.onAfresh)
		}),
	)
}

func (v *Verdict) onAfresh(ctx app.Context, e app.Event) { send(ctx, Afresh{}) }

func (v *Verdict) onGPX(ctx app.Context, e app.Event) {
	if err := browser.Download(fileName(v.Trip.Name)+".gpx", "application/gpx+xml", stopsGPX(v.Trip, v.Plan)); err != nil {
		send(ctx, NotSaved{err.Error()})
	}
}

// parts lists what the cost is made of; what is nothing is left out.
func (v *Verdict) parts() []app.UI {
	p := v.Plan
	var out []app.UI
	for _, part := range []struct {
		words string
		sum   float64
	}{
		{say.goods, p.Parts.Goods},
		{say.fees, p.Parts.Fees},
		{say.nightFees, p.Parts.Nights},
		{say.refill, p.Parts.Refill},
		{capital(say.paid), p.Cost - p.Parts.Time},
		{say.timeValue, p.Parts.Time},
		{capital(say.withTime), p.Cost},
	} {
		if part.sum > 0.004 {
			out = append(out, app.Div().Body(app.Dt().Text(part.words), app.Dd().Text(money(part.sum, p.Currency))))
		}
	}
	return out
}
