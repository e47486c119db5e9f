package itinerary

import (
	"math"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// Counted says what is planned for, by tank, and where that comes from.
type Counted struct {
	app.Compo
	Say        say.Voice
	Counts     []trip.Count
	Confidence float64
}

func (c *Counted) Render() app.UI {
	if len(c.Counts) == 0 {
		return app.Div()
	}
	var items []app.UI
	for _, k := range c.Counts {
		items = append(items, app.Li().Body(app.B().Text(k.Name+": "), app.Text(c.line(k)), show.Text("help", c.Say.Fact(k.Source))))
	}
	return app.Section().ID("counted").Class("more").Body(app.Details().Body(
		app.Summary().Body(app.B().Text(c.Say.Text("counted.title", show.Times(c.Confidence)))),
		app.Ul().Body(items...)))
}

func (c *Counted) line(k trip.Count) string {
	var parts []string
	if per := c.Say.Shown(1, "km"); something(k.Per100) {
		parts = append(parts, c.Say.Text("counted.100."+string(k.Per100.Turn()), band(k.Per100, k.Unit, 1/per), fact.V{"unit": fact.Text(c.Say.Symbol("km"))}))
	}
	if something(k.Night) {
		parts = append(parts, c.Say.Text("counted.night."+string(k.Night.Turn()), band(k.Night, k.Unit, 1)))
	}
	if trip.KindOfTank(k.Tank).Moves && c.Say.Symbol("L/100 km") != "L/100 km" {
		parts = append(parts, c.Say.Quantity(k.Per100.High, "L/100 km", 1))
	}
	share := fact.V{"share": fact.Share(math.Abs(k.Factor-1), 0)}
	switch {
	case k.Factor > 1:
		parts = append(parts, c.Say.Text("counted.more", share))
	case k.Factor > 0 && k.Factor < 1:
		parts = append(parts, c.Say.Text("counted.less", share))
	}
	return strings.Join(parts, "; ")
}

func something(b life.Band) bool { return math.Abs(b.Likely)+math.Abs(b.High) > 1e-6 }

// band is a use, or a gain, in so many times its number.
func band(b life.Band, unit string, times float64) fact.V {
	likely, planned := b.Sizes()
	return fact.V{"likely": fact.Quantity(likely*times, unit, 1), "high": fact.Quantity(planned*times, unit, 1)}
}
