package page

import (
	"strconv"
	"strings"

	"ullage/app/draw"
	"ullage/planner/life/units"
	"ullage/planner/trip"
)

// Units are what distances, amounts, temperatures and masses are shown and
// typed in: "" (metric), british, american. Everything is stored in metric.
type Units string

func (u Units) of(q units.Quantity) units.Unit { return u.system().Unit(q) }

func (u Units) system() units.System {
	switch u {
	case "british":
		return units.British()
	case "american":
		return units.American()
	}
	return units.Metric()
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
		v.Symbol = gallon(v.Symbol)
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

// prose shows what a sentence measures in the units chosen.
func (u Units) prose(text string) string {
	return strings.ReplaceAll(u.system().Prose(text), gallons, gallon(gallons))
}

// gallons is a unit of the American choice; there are no others in it, so which
// they are need not be said.
const gallons = "gal (US)"

func gallon(symbol string) string {
	short, _, _ := strings.Cut(symbol, " ")
	return short
}

func (u Units) proses(texts []string) []string {
	out := make([]string, len(texts))
	for i, s := range texts {
		out[i] = u.prose(s)
	}
	return out
}

// unitsKey is the form's field of the units.
const unitsKey = "units"
