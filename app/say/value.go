package say

import (
	"strings"

	"ullage/planner/fact"
)

// Value is one value in words.
func (v Voice) Value(x fact.Value) string {
	switch x.Is {
	case fact.IsTerm:
		return v.Text(x.S)
	case fact.IsTank:
		return v.Tank(x.Unit, x.S)
	case fact.IsCount:
		return v.Count(x.N)
	case fact.IsQuantity:
		return v.Quantity(x.N, x.Unit, x.Digits)
	case fact.IsMark:
		return v.Mark(x.N, x.Digits)
	case fact.IsMoney:
		return v.Money(x.N, x.Unit)
	case fact.IsRate:
		return v.Rate(x.N, x.Per, x.Unit)
	case fact.IsClock:
		return v.Clock(x.N)
	case fact.IsSpan:
		return v.Span(x.N)
	case fact.IsDate:
		return v.Date(x.S)
	case fact.IsShare:
		return v.Share(x.N, x.Digits)
	case fact.IsList:
		parts := make([]string, len(x.List))
		for i, e := range x.List {
			parts[i] = v.Value(e)
		}
		return v.List(parts)
	case fact.IsFact:
		if x.Fact == nil {
			return ""
		}
		return v.Fact(*x.Fact)
	}
	return x.S
}

// List joins texts as the language does: "a", "a and b", "a, b and c".
func (v Voice) List(parts []string) string {
	switch n := len(parts); n {
	case 0:
		return ""
	case 1:
		return parts[0]
	default:
		return v.Text("list.and", fact.V{"a": fact.Text(strings.Join(parts[:n-1], ", ")), "b": fact.Text(parts[n-1])})
	}
}

// Tank is what a tank is called within a sentence: as the catalogue calls it,
// or by the name of its own that the vehicle gives it.
func (v Voice) Tank(id, name string) string {
	key := "tank." + id
	usual := v.Has(key)
	if usual && (name == "" || name == Capital(Voice{}.Text(key))) {
		return v.Text(key)
	}
	if name == "" {
		return id
	}
	return name
}

// Place is what a kind of place is called within a sentence.
func (v Voice) Place(kind string) string {
	if key := "place." + kind; v.Has(key) {
		return v.Text(key)
	}
	return kind
}
