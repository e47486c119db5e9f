package triptest

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"ullage/planner/fact"
)

// Line writes a fact in a line for tests: its kind, and its values by name with
// the digits that they are said with. "out.low limit=2.74m need=2.75m".
func Line(f fact.Fact) string {
	parts := []string{string(f.Kind)}
	for _, name := range slices.Sorted(maps.Keys(f.Values)) {
		if text := value(f.Values[name]); text != "" {
			parts = append(parts, name+"="+text)
		}
	}
	return strings.Join(parts, " ")
}

// Lines writes facts, separated by bars.
func Lines(fs []fact.Fact) string {
	out := make([]string, len(fs))
	for i, f := range fs {
		out[i] = Line(f)
	}
	return strings.Join(out, " | ")
}

// Of are the facts of a kind.
func Of(fs []fact.Fact, kind fact.Kind) []fact.Fact {
	return slices.DeleteFunc(slices.Clone(fs), func(f fact.Fact) bool { return f.Kind != kind })
}

// Has says whether there is a fact of a kind.
func Has(fs []fact.Fact, kind fact.Kind) bool { return len(Of(fs, kind)) > 0 }

func value(v fact.Value) string {
	switch v.Is {
	case fact.IsQuantity:
		return fmt.Sprintf("%.*f%s", v.Digits, v.N, v.Unit)
	case fact.IsMark:
		return fmt.Sprintf("km%.*f", v.Digits, v.N)
	case fact.IsMoney:
		return fmt.Sprintf("%.2f%s", v.N, v.Unit)
	case fact.IsRate:
		return fmt.Sprintf("%.2f%s/%s", v.N, v.Per, v.Unit)
	case fact.IsClock:
		return fmt.Sprintf("%02d:%02d", int(v.N+0.5)/60%24, int(v.N+0.5)%60)
	case fact.IsSpan:
		return fmt.Sprintf("%.0fmin", v.N)
	case fact.IsCount:
		return fmt.Sprintf("%.0f", v.N)
	case fact.IsShare:
		return fmt.Sprintf("%.*f%%", v.Digits, 100*v.N)
	case fact.IsTank:
		return v.Unit
	case fact.IsFact:
		return "(" + Line(*v.Fact) + ")"
	case fact.IsList:
		var parts []string
		for _, x := range v.List {
			parts = append(parts, value(x))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	}
	return v.S
}
