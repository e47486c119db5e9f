package page

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/planner/trip"
)

// Others shows what safety costs, and other plans that one may like better.
// It stands behind the days: it comes after the plan, and nothing may move.
type Others struct {
	app.Compo
	Plan  trip.Itinerary
	Units Units
}

func (o *Others) Render() app.UI {
	p := o.Plan
	if p.Safety == nil && p.Care == nil && len(p.Others) == 0 {
		return app.Div()
	}
	var items []app.UI
	if p.Safety != nil {
		items = append(items, app.P().Class("safety").Text(p.Safety.Text))
	}
	if p.Care != nil {
		items = append(items, app.P().Class("safety").Text(p.Care.Text))
	}
	for _, other := range p.Others {
		items = append(items, app.Details().Body(
			app.Summary().Body(app.B().Text(extra(other.Extra, p.Currency)), app.Text(other.Text)),
			app.Ul().Body(lines(o.Units.proses(other.Days))...),
			app.If(other.Avoid != "", func() app.UI {
				return &AvoidButton{Place: other.Avoid, Label: fmt.Sprintf(say.avoidThis, o.name(other.Avoid))}
			}),
		))
	}
	return app.Section().ID("others").Class("others").Aria("labelledby", "others-title").Body(
		append([]app.UI{app.H2().ID("others-title").Text(say.othersTitle)}, items...)...)
}

func (o *Others) name(place string) string {
	for _, c := range o.Plan.Places {
		if c.Place == place && c.Name != "" {
			return c.Name
		}
	}
	return place
}

// extra says what something costs more, or less.
func extra(sum float64, currency string) string {
	switch {
	case sum >= 0.005:
		return fmt.Sprintf(say.othersMore, money(sum, currency))
	case sum <= -0.005:
		return fmt.Sprintf(say.othersLess, money(-sum, currency))
	}
	return say.othersSame
}
