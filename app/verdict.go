package page

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/browser"
	"ullage/app/draw"
	"ullage/app/say"
	"ullage/planner/trip"
)

// A Verdict is the plan in one line and what it costs.
type Verdict struct {
	app.Compo
	Trip trip.Trip
	Plan trip.Itinerary
	Say  say.Voice
	Kept bool // a cheaper plan may have other stops than the plan in use
}

func (v *Verdict) Render() app.UI {
	p := v.Plan
	return app.Div().Class("verdict").Body(
		app.P().Class("count").Text(strings.Join([]string{
			count(len(p.Days), word.days),
			v.Say.Km(p.LengthKm),
			count(len(draw.Numbers(p.Days)), word.calls),
			v.Say.Money(p.Cost-p.Parts.Time, p.Currency) + " " + word.paid,
		}, " · ")),
		scales(p.Weight, v.Say),
		app.Details().Class("cost").Body(
			app.Summary().Text(word.costTitle),
			app.Dl().Body(v.parts()...),
		),
		app.Button().Type("button").Class("quiet").Text(word.gpx).OnClick(v.onGPX),
		app.If(v.Kept, func() app.UI {
			return app.Button().Type("button").Class("quiet").Text(word.afresh).OnClick(v.onAfresh)
		}),
	)
}

func (v *Verdict) onAfresh(ctx app.Context, e app.Event) { send(ctx, Afresh{}) }

func (v *Verdict) onGPX(ctx app.Context, e app.Event) {
	if err := browser.Download(fileName(v.Trip.Name)+".gpx", "application/gpx+xml", stopsGPX(v.Say, v.Trip, v.Plan)); err != nil {
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
		{word.goods, p.Parts.Goods},
		{word.fees, p.Parts.Fees},
		{word.nightFees, p.Parts.Nights},
		{word.refill, p.Parts.Refill},
		{capital(word.paid), p.Cost - p.Parts.Time},
		{word.timeValue, p.Parts.Time},
		{capital(word.withTime), p.Cost},
	} {
		if part.sum > 0.004 {
			out = append(out, app.Div().Body(app.Dt().Text(part.words), app.Dd().Text(v.Say.Money(part.sum, p.Currency))))
		}
	}
	return out
}
