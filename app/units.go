package page

import (
	"strings"

	"ullage/app/say"
	"ullage/planner/life/units"
	"ullage/planner/trip"
)

// shownIn is a level strip with its numbers as shown.
func shownIn(v say.Voice, s trip.Strip) trip.Strip {
	t := v.Unit(s.Unit)
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

// prose shows what a sentence measures in the units chosen. It goes when there are
// only facts.
func prose(v say.Voice, text string) string {
	s := units.Metric()
	switch v.Units {
	case "british":
		s = units.British()
	case "american":
		s = units.American()
	}
	return strings.ReplaceAll(s.Prose(text), "gal (US)", "gal")
}

func proses(v say.Voice, texts []string) []string {
	out := make([]string, len(texts))
	for i, s := range texts {
		out[i] = prose(v, s)
	}
	return out
}

// unitsKey is the form's field of the units.
const unitsKey = "units"
