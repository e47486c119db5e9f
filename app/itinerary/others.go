package itinerary

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Others shows what safety costs, and other plans that one may like better.
// It stands behind the days: it comes after the plan, and nothing may move.
type Others struct {
	app.Compo
	Say  say.Voice
	Plan trip.Itinerary
}

func (o *Others) Render() app.UI {
	p := o.Plan
	if p.Safety == nil && p.Care == nil && len(p.Others) == 0 {
		return app.Div()
	}
	items := []app.UI{app.H2().ID("others-title").Text(o.Say.Text("others.title"))}
	if p.Safety != nil {
		items = append(items, app.P().Class("safety").Text(o.Say.Fact(p.Safety.Says)))
	}
	if p.Care != nil {
		items = append(items, app.P().Class("safety").Text(o.Say.Fact(p.Care.Says)))
	}
	for _, other := range p.Others {
		items = append(items, app.Details().Body(
			app.Summary().Body(app.B().Text(o.extra(other.Extra)), app.Text(strings.Join(o.Say.Facts(other.Says), "; "))),
			app.Ul().Body(show.Lines(o.Say.Facts(other.Days))...),
			app.If(other.Avoid != "", func() app.UI {
				return &AvoidButton{Place: other.Avoid, Label: o.Say.Text("stop.avoid_named", fact.V{"place": fact.Text(placeName(p, other.Avoid))})}
			}),
		))
	}
	return app.Section().ID("others").Class("others").Aria("labelledby", "others-title").Body(items...)
}

// extra says what something costs more, or less.
func (o *Others) extra(sum float64) string {
	switch {
	case sum >= 0.005:
		return o.Say.Text("others.more", fact.V{"sum": fact.Money(sum, o.Plan.Currency)})
	case sum <= -0.005:
		return o.Say.Text("others.less", fact.V{"sum": fact.Money(-sum, o.Plan.Currency)})
	}
	return o.Say.Text("others.same")
}
