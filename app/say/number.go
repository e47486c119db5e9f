package say

import (
	"strings"

	"ullage/planner/life/units"
)

// Systems are the units that a voice can speak in.
func Systems() []string { return []string{"metric", "british", "american"} }

// system is what numbers are shown in.
func (v Voice) system() units.System {
	switch v.Units {
	case "british":
		return units.British()
	case "american":
		return units.American()
	}
	return units.Metric()
}

// stored are the quantities by the symbol of the unit that they are stored in.
var stored = map[string]units.Quantity{
	"km": units.Distance, "m": units.Length, "km/h": units.Speed, "L": units.Volume, "L/100 km": units.Consumption,
	"°C": units.Temperature, "kg": units.Mass, "kWh": units.Energy,
}

// Unit is what a quantity stored in a unit is shown in. One that no system shows
// otherwise, such as Ah, is shown as it is.
func (v Voice) Unit(unit string) units.Unit {
	q, ok := stored[unit]
	if !ok {
		u := units.Metric().Unit(units.Volume) // a scale of 1
		u.Symbol = unit
		return u
	}
	u := v.system().Unit(q)
	if v.Units == "american" { // there are no other gallons in it
		u.Symbol = strings.TrimSuffix(u.Symbol, " (US)")
	}
	return u
}

// Symbol is the unit that a quantity stored in a unit is shown in.
func (v Voice) Symbol(unit string) string { return v.Unit(unit).Symbol }

// Shown is a stored number as it is shown, without its unit.
func (v Voice) Shown(n float64, unit string) float64 { return v.Unit(unit).Show(n) }

// Quantity is a number stored in a unit, as shown: "12.5 km", "7.8 mi". Another
// unit's digits are used where they are more than those asked for.
func (v Voice) Quantity(n float64, unit string, digits int) string {
	return v.with(v.digits(n, unit, digits), v.Symbol(unit))
}

// with is a number and its unit, if it has one.
func (v Voice) with(number, symbol string) string {
	if symbol == "" {
		return number
	}
	return number + v.gap() + symbol
}

// digits is the number of a quantity.
func (v Voice) digits(n float64, unit string, digits int) string {
	u := v.Unit(unit)
	if u.Symbol != unit && digits >= 0 {
		digits = max(digits, u.Digits)
	}
	text := v.number(u.Show(n), digits)
	if strings.Trim(text, "−0.") == "" { // nothing is nothing in any unit
		return "0"
	}
	return text
}

// Km is a distance with a digit after the point below ten: "7.4 km", "212 km".
func (v Voice) Km(km float64) string { return v.Amount(km, "km") }

// Amount is a number as a gauge is read: whole from ten, one digit below.
func (v Voice) Amount(n float64, unit string) string {
	return v.Bare(n, unit) + v.gap() + v.Symbol(unit)
}

// Bare is an amount without its unit.
func (v Voice) Bare(n float64, unit string) string { return v.number(v.Shown(n, unit), -1) }

// Mark is a position along the route: "km 120", "mile 75".
func (v Voice) Mark(km float64, digits int) string {
	key := "mark.km"
	if v.Symbol("km") != "km" {
		key = "mark.mile"
	}
	return v.word(key) + v.gap() + v.number(v.Shown(km+v.Behind, "km"), digits)
}

// Short is a short way in metres or feet; a longer one is in km or miles.
func (v Voice) Short(m float64) string {
	if m >= 1000 {
		return v.Km(m / 1000)
	}
	return v.number(v.Shown(m, "m"), 0) + v.gap() + v.Symbol("m")
}

// Money is a sum: "12.30 EUR".
func (v Voice) Money(sum float64, currency string) string {
	return v.with(v.number(sum, units.MoneyDigits(currency)), currency)
}

// Rate is a price for a unit: "1.60 EUR/L".
func (v Voice) Rate(sum float64, currency, unit string) string {
	u := v.Unit(unit)
	return v.number(u.ShowPer(sum), 2) + v.gap() + currency + "/" + u.Symbol
}

// Count is a whole number.
func (v Voice) Count(n float64) string { return v.number(n, 0) }

// Share is a part of one in percent: "90 %".
func (v Voice) Share(n float64, digits int) string { return v.number(100*n, digits) + v.gap() + "%" }

// number writes n with digits after the point; -1: as a gauge is read.
func (v Voice) number(n float64, digits int) string { return v.grouped(figures(n, digits)) }

// grouped puts thin spaces between thousands, and the sign that is one.
func (v Voice) grouped(number string) string {
	sign := ""
	if rest, negative := strings.CutPrefix(number, "-"); negative {
		sign, number = "−", rest
	}
	whole, rest, found := strings.Cut(number, ".")
	if v.Thin {
		for i := len(whole) - 3; i > 0 && len(whole) > 4; i -= 3 {
			whole = whole[:i] + thin + whole[i:]
		}
	}
	if found {
		rest = "." + rest
	}
	return sign + whole + rest
}
