package osm

import (
	"regexp"
	"strconv"
	"strings"

	"ullage/planner/trip"
)

// This file reads the greatest height, width, length and mass of vehicles.

const (
	metresPerFoot  = 0.3048 // international foot, 1959 agreement
	metresPerInch  = 0.0254 // the same
	tonnesPerPound = 0.00045359237
	tonnesPerShort = 0.90718474 // short ton, 2000 lb
	tonnesPerLong  = 1.0160469088
)

// limitRules: of several keys that give a number the smallest counts.
// Source: Key:maxheight, Key:maxwidth, Key:maxlength, Key:maxweight, Key:maxweightrating, Key:maxgcweight.
var limitRules = []struct {
	keys  []string
	units map[string]float64
	field func(*trip.Limits) *float64
}{
	{[]string{"maxheight", "maxheight:physical"}, lengthUnits, func(l *trip.Limits) *float64 { return &l.HeightM }},
	{[]string{"maxwidth", "maxwidth:physical"}, lengthUnits, func(l *trip.Limits) *float64 { return &l.WidthM }},
	{[]string{"maxlength"}, lengthUnits, func(l *trip.Limits) *float64 { return &l.LengthM }},
	{[]string{"maxweight", "maxweightrating", "maxgcweight", "maxgcweightrating"}, massUnits, func(l *trip.Limits) *float64 { return &l.MassT }},
}

// Units by their usual spellings; "" is the default unit. Source: Map_Features/Units.
var (
	lengthUnits = map[string]float64{"": 1, "m": 1, "metre": 1, "metres": 1, "meter": 1, "meters": 1, "cm": 0.01, "mm": 0.001,
		"ft": metresPerFoot, "feet": metresPerFoot, "foot": metresPerFoot, "'": metresPerFoot, "in": metresPerInch, "\"": metresPerInch}
	massUnits = map[string]float64{"": 1, "t": 1, "tonne": 1, "tonnes": 1, "kg": 0.001, "lb": tonnesPerPound, "lbs": tonnesPerPound,
		"st": tonnesPerShort, "lt": tonnesPerLong}
)

// noLimit are values that state that there is none.
const noLimit = "none no unsigned no_sign noindications no_indications"

// limitsOf reads the limits. A stated one that gives no number is kept as text in Unclear.
func limitsOf(tags Tags) (l trip.Limits) {
	var unclear []string
	for _, r := range limitRules {
		for _, k := range r.keys {
			text, ok := tags[k]
			if !ok || hasWord(noLimit, text) {
				continue
			}
			v, ok := measure(text, r.units)
			if !ok {
				unclear = append(unclear, k+"="+text)
				continue
			}
			if f := r.field(&l); *f == 0 || v < *f {
				*f = v
			}
		}
	}
	l.Unclear = strings.Join(unclear, "; ")
	return l
}

var (
	oneNumber  = regexp.MustCompile(`^([0-9]+(?:[.,][0-9]+)?)\s*([a-z'"]*)\.?$`)
	feetInches = regexp.MustCompile(`^([0-9]+)\s*(?:'|ft)\s*([0-9]+(?:\.[0-9]+)?)\s*(?:"|''|in)?$`)
)

// measure reads a number with a unit: 3.5, "3,5 m", 6'7", "12 ft 6 in", "7.5 t". It is false for what has no
// positive finite number or an unknown unit.
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
