package page

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"ullage/app/draw"
	"ullage/planner/life/units"
	"ullage/planner/trip"
)

// Units are what distances, amounts, temperatures and masses are shown and
// typed in: "" (metric), british, american. Everything is stored in metric.
type Units string

func (u Units) of(q units.Quantity) units.Unit {
	switch u {
	case "british":
		return units.British().Unit(q)
	case "american":
		return units.American().Unit(q)
	}
	return units.Metric().Unit(q)
}

// km writes a distance: 7.4 km, 212 km, 132 mi.
func (u Units) km(v float64) string {
	d := u.of(units.Distance)
	return thousands(draw.Amount(d.Show(v))) + thin + d.Symbol
}

// mark writes a position along the route: km 120, mile 75.
func (u Units) mark(km float64) string {
	d := u.of(units.Distance)
	word := "km "
	if d.ID != "km" {
		word = "mile "
	}
	return word + draw.Amount(d.Show(km))
}

// span writes a short distance in metres or feet, a longer one as km does.
func (u Units) span(m float64) string {
	if m >= 1000 {
		return u.km(m / 1000)
	}
	d := u.of(units.Length)
	return strconv.FormatFloat(d.Show(m), 'f', 0, 64) + thin + d.Symbol
}

// tank is the unit of a tank's content. What is not litres is shown as it is.
func (u Units) tank(unit string) units.Unit {
	if unit == "L" {
		v := u.of(units.Volume)
		v.Symbol, _, _ = strings.Cut(v.Symbol, " ") // there are no gallons but those of the choice
		return v
	}
	ah := units.Metric().Unit(units.Volume) // a scale of 1
	ah.Symbol = unit
	return ah
}

// amount writes an amount of a tank's content.
func (u Units) amount(v float64, unit string) string {
	t := u.tank(unit)
	return amount(t.Show(v), t.Symbol)
}

// strip is a level strip with its numbers as shown.
func (u Units) strip(s trip.Strip) trip.Strip {
	t := u.tank(s.Unit)
	if t.Symbol == s.Unit {
		return s
	}
	s.Unit, s.Capacity, s.Reserve = t.Symbol, t.Show(s.Capacity), t.Show(s.Reserve)
	points := make([]trip.Level, len(s.Points))
	for i, p := range s.Points {
		p.L, p.Low, p.Likely, p.High = t.Show(p.L), t.Show(p.Low), t.Show(p.Likely), t.Show(p.High)
		points[i] = p
	}
	s.Points = points
	return s
}

// measure finds positions (km 120), amounts of money for a litre (1.68 EUR/L),
// and numbers or ranges with a unit (55 to 60 °C) in a sentence about the plan;
// the group before these keeps rates and clock times out of it.
var measure = regexp.MustCompile(`\bkm (\d+(?:\.\d+)?)|(\d+\.\d+) ([A-Z]{3})/L\b|(^|[^:.\d])(?:(-?\d+(?:\.\d+)?)( to |–))?(-?\d+(?:\.\d+)?) (km|L|°C|kg|m|t)\b`)

// prose shows what a sentence measures in the units chosen.
func (u Units) prose(text string) string {
	if u.metric() {
		return text
	}
	return measure.ReplaceAllStringFunc(text, func(s string) string {
		m := measure.FindStringSubmatch(s)
		if m[1] != "" {
			return u.mark(parsed(m[1]))
		}
		if m[2] != "" {
			unit := u.tank("L")
			return fmt.Sprintf("%.2f %s/%s", unit.ShowPer(parsed(m[2])), m[3], unit.Symbol)
		}
		unit, scale := u.tank(m[8]), 1.0
		switch m[8] {
		case "km":
			unit = u.of(units.Distance)
		case "°C":
			unit = u.of(units.Temperature)
		case "kg":
			unit = u.of(units.Mass)
		case "t":
			if unit = u.of(units.Mass); unit.Symbol == "kg" {
				return s
			}
			scale = 1000
		case "m":
			unit = u.of(units.Length)
		}
		number := func(text string) string {
			digits := 0
			if i := strings.IndexByte(text, '.'); i >= 0 && scale == 1 {
				digits = len(text) - i - 1
			}
			if m[8] != "m" {
				digits = max(digits, unit.Digits)
			}
			return strconv.FormatFloat(unit.Show(scale*parsed(text)), 'f', digits, 64)
		}
		if m[5] != "" {
			m[4] += number(m[5]) + m[6]
		}
		return m[4] + number(m[7]) + " " + unit.Symbol
	})
}

func (u Units) metric() bool { return u == "" || u == "metric" }

func (u Units) proses(texts []string) []string {
	out := make([]string, len(texts))
	for i, s := range texts {
		out[i] = u.prose(s)
	}
	return out
}

func parsed(s string) float64 {
	v, _ := strconv.ParseFloat(s, 64) // it matched
	return v
}

// unitsKey is the form's field of the units.
const unitsKey = "units"
