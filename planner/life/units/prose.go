package units

import (
	"regexp"
	"strconv"
	"strings"
)

const number = `[−-]?\d+(?:\.\d+)?`

// In a sentence: a position along a route (km 120), a price per litre (1.60
// EUR/L), and what is measured (8–11 L/100 km, 20 to 45 °C). What stands before
// the third keeps clock times and tags (12:07 km, maxheight=2.6 m) out of it.
var (
	positions = regexp.MustCompile(`\bkm (\d+(?:\.\d+)?)`)
	rates     = regexp.MustCompile(`(` + number + `) ([A-Z]{3})/L\b`)
	measures  = regexp.MustCompile(`(^|[^:.=\d\pL−-])(` + number + `)(?:(–| to )(` + number + `))? (km/h|km|L/100 km|L|°C|kg|m)\b`)
)

var measured = map[string]Quantity{
	"km/h": Speed, "km": Distance, "L/100 km": Consumption, "L": Volume, "°C": Temperature, "kg": Mass, "m": Length,
}

// Prose shows what a sentence measures in the units chosen. A number keeps its
// digits after the point, and gets those of its new unit if they are more. A
// list of numbers with one unit at its end is not understood: write the unit at
// each.
func (s System) Prose(text string) string {
	if len(s) == 0 {
		return text
	}
	show := func(n string, u Unit) string {
		v, _ := strconv.ParseFloat(strings.Replace(n, "−", "-", 1), 64)
		_, after, _ := strings.Cut(n, ".")
		return strings.Replace(strconv.FormatFloat(u.Show(v), 'f', max(len(after), u.Digits), 64), "-", "−", 1)
	}
	litre := s.Unit(Volume)
	text = rates.ReplaceAllStringFunc(text, func(found string) string {
		m := rates.FindStringSubmatch(found)
		v, _ := strconv.ParseFloat(m[1], 64)
		if litre.Symbol == "L" {
			return found
		}
		return strconv.FormatFloat(litre.ShowPer(v), 'f', 2, 64) + " " + m[2] + "/" + litre.Symbol
	})
	text = measures.ReplaceAllStringFunc(text, func(found string) string {
		m := measures.FindStringSubmatch(found)
		u := s.Unit(measured[m[5]])
		if u.Symbol == m[5] {
			return found
		}
		out := m[1] + show(m[2], u)
		if m[3] != "" {
			out += m[3] + show(m[4], u)
		}
		return out + " " + u.Symbol
	})
	if distance := s.Unit(Distance); distance.Symbol != "km" {
		text = positions.ReplaceAllStringFunc(text, func(found string) string {
			return "mile " + show(positions.FindStringSubmatch(found)[1], distance)
		})
	}
	return text
}
