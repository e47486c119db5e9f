package tag

import (
	"regexp"
	"strconv"
	"strings"
)

// This file reads numbers with units.

const (
	metresPerFoot  = 0.3048 // international foot, 1959 agreement
	metresPerInch  = 0.0254 // the same
	tonnesPerPound = 0.00045359237
	tonnesPerShort = 0.90718474 // short ton, 2000 lb
	tonnesPerLong  = 1.0160469088
)

// Units by their usual spellings; "" is the default unit. Source: Map_Features/Units.
var (
	lengthUnits = map[string]float64{"": 1, "m": 1, "metre": 1, "metres": 1, "meter": 1, "meters": 1, "cm": 0.01, "mm": 0.001,
		"ft": metresPerFoot, "feet": metresPerFoot, "foot": metresPerFoot, "'": metresPerFoot, "in": metresPerInch, "\"": metresPerInch}
	massUnits = map[string]float64{"": 1, "t": 1, "tonne": 1, "tonnes": 1, "kg": 0.001, "lb": tonnesPerPound, "lbs": tonnesPerPound,
		"st": tonnesPerShort, "lt": tonnesPerLong}
)

// Metres reads a length: 3.5, "3,5 m", 6'7", "12 ft 6 in". It is false for what has no number above 0 and below 1000, or an
// unknown unit.
func Metres(text string) (float64, bool) { return measure(text, lengthUnits) }

// Tonnes reads a mass: 3.5, "7.5 t", "3500 kg", "7000 lbs"; see [Metres].
func Tonnes(text string) (float64, bool) { return measure(text, massUnits) }

var (
	oneNumber  = regexp.MustCompile(`^([0-9]+(?:[.,][0-9]+)?)\s*([a-z'"]*)\.?$`)
	feetInches = regexp.MustCompile(`^([0-9]+)\s*(?:'|ft)\s*([0-9]+(?:\.[0-9]+)?)\s*(?:"|''|in)?$`)
)

func measure(text string, units map[string]float64) (float64, bool) {
	text = strings.ToLower(strings.TrimSpace(text))
	text = strings.NewReplacer("’", "'", "′", "'", "”", "\"", "″", "\"").Replace(text)
	if m := feetInches.FindStringSubmatch(text); m != nil && units["ft"] != 0 {
		feet, _ := strconv.ParseFloat(m[1], 64)
		inches, _ := strconv.ParseFloat(m[2], 64)
		v := feet*metresPerFoot + inches*metresPerInch
		return v, v > 0 && v < 1000
	}
	m := oneNumber.FindStringSubmatch(text)
	if m == nil {
		return 0, false
	}
	unit, ok := units[m[2]]
	v, err := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
	v *= unit
	return v, ok && err == nil && v > 0 && v < 1000
}
