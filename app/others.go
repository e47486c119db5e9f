package page

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/planner/trip"
)

// Others shows what safety costs, and other plans that one may like better.
// It stands behind the days: it comes after the plan, and nothing may move.
type Others struct {
	app.Compo
	Plan trip.Itinerary
	Say  say.Voice
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
			app.Summary().Body(app.B().Text(extra(o.Say, other.Extra, p.Currency)), app.Text(other.Text)),
			app.Ul().Body(lines(proses(o.Say, other.Days))...),
			app.If(other.Avoid != "", func() app.UI {
				return &AvoidButton{Place: other.Avoid, Label: fmt.Sprintf(word.avoidThis, o.name(other.Avoid))}
			}),
		))
	}
	return app.Section().ID("others").Class("others").Aria("labelledby", "others-title").Body(
		append([]app.UI{app.H2().ID("others-title").Text(word.othersTitle)}, items...)...)
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
func extra(v say.Voice, sum float64, currency string) string {
	switch {
	case sum >= 0.005:
		return fmt.Sprintf(word.othersMore, v.Money(sum, currency))
	case sum <= -0.005:
		return fmt.Sprintf(word.othersLess, v.Money(-sum, currency))
	}
	return word.othersSame
}
