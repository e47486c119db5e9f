package show

import (
	"strings"

	"ullage/app/say"
	"ullage/planner/life/units"
)

// Prose shows what a sentence measures in the units chosen. It goes when there are
// only facts.
func Prose(v say.Voice, text string) string {
	s := units.Metric()
	switch v.Units {
	case "british":
		s = units.British()
	case "american":
		s = units.American()
	}
	return strings.ReplaceAll(s.Prose(text), "gal (US)", "gal")
}

// Proses shows several.
func Proses(v say.Voice, texts []string) []string {
	out := make([]string, len(texts))
	for i, s := range texts {
		out[i] = Prose(v, s)
	}
	return out
}
