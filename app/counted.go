package page

import (
	"fmt"
	"math"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/planner/life"
	"ullage/planner/life/units"
	"ullage/planner/trip"
)

// Counted says what the plan counts with, by tank, and where that comes from.
type Counted struct {
	app.Compo
	Counts     []trip.Count
	Confidence float64
	Units      Units
}

func (c *Counted) Render() app.UI {
	if len(c.Counts) == 0 {
		return app.Div()
	}
	var items []app.UI
	for _, k := range c.Counts {
		items = append(items, app.Li().Body(app.B().Text(k.Name+": "), app.Text(c.line(k)), text("help", c.Units.prose(k.Source))))
	}
	return app.Section().ID("counted").Class("more").Body(app.Details().Body(
		app.Summary().Body(app.B().Text(fmt.Sprintf(say.countedTitle, 100*c.Confidence))),
		app.Ul().Body(items...)))
}

func (c *Counted) line(k trip.Count) string {
	var parts []string
	unit, distance := c.Units.tank(k.Unit), c.Units.of(units.Distance)
	add := func(b life.Band, format, where string, scale float64) {
		if math.Abs(b.Likely)+math.Abs(b.High) > 1e-6 {
			if b.High < 0 {
				format, scale = say.countedGain, -scale
			}
			parts = append(parts, fmt.Sprintf(format, plain1(unit.Show(b.Likely)/scale), plain1(unit.Show(b.High)/scale), unit.Symbol, where))
		}
	}
	add(k.Per100, say.countedLine, "100 "+distance.Symbol, distance.Show(1))
	add(k.Night, say.countedLine, say.countedNight, 1)
	if u := c.Units.of(units.Consumption); k.Tank == "diesel" && u.Symbol != units.Metric().Unit(units.Consumption).Symbol {
		parts = append(parts, u.Format(k.Per100.High))
	}
	if k.Factor != 0 {
		parts = append(parts, fmt.Sprintf(say.countedLearnt, 100*k.Factor))
	}
	return strings.Join(parts, "; ")
}

// plain1 writes a number with one digit after the point.
func plain1(v float64) string { return fmt.Sprintf("%.1f", v) }
