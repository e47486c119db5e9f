package page

import (
	"fmt"
	"math"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// Counted says what the plan counts with, by tank, and where that comes from.
type Counted struct {
	app.Compo
	Counts     []trip.Count
	Confidence float64
	Say        say.Voice
}

func (c *Counted) Render() app.UI {
	if len(c.Counts) == 0 {
		return app.Div()
	}
	var items []app.UI
	for _, k := range c.Counts {
		items = append(items, app.Li().Body(app.B().Text(k.Name+": "), app.Text(c.line(k)), text("help", c.Say.Fact(k.Source))))
	}
	return app.Section().ID("counted").Class("more").Body(app.Details().Body(
		app.Summary().Body(app.B().Text(fmt.Sprintf(word.countedTitle, 100*c.Confidence))),
		app.Ul().Body(items...)))
}

func (c *Counted) line(k trip.Count) string {
	var parts []string
	unit, distance := c.Say.Unit(k.Unit), c.Say.Unit("km")
	add := func(b life.Band, format, where string, scale float64) {
		if math.Abs(b.Likely)+math.Abs(b.High) > 1e-6 {
			if b.High < 0 {
				format, scale = word.countedGain, -scale
			}
			parts = append(parts, fmt.Sprintf(format, plain1(unit.Show(b.Likely)/scale), plain1(unit.Show(b.High)/scale), unit.Symbol, where))
		}
	}
	add(k.Per100, word.countedLine, "100 "+distance.Symbol, distance.Show(1))
	add(k.Night, word.countedLine, word.countedNight, 1)
	if k.Tank == "diesel" && c.Say.Symbol("L/100 km") != "L/100 km" {
		parts = append(parts, c.Say.Quantity(k.Per100.High, "L/100 km", 1))
	}
	if k.Factor != 0 {
		parts = append(parts, fmt.Sprintf(word.countedLearnt, 100*k.Factor))
	}
	return strings.Join(parts, "; ")
}

// plain1 writes a number with one digit after the point.
func plain1(v float64) string { return fmt.Sprintf("%.1f", v) }
