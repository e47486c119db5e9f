package say

import (
	"strings"
	"unicode"

	"ullage/data/plain"
	"ullage/planner/fact"
)

// Fact is a fact as a sentence, or as the clause or the word that its kind is.
//
//go:noinline
func (v Voice) Fact(f fact.Fact) string {
	if f.Nothing() {
		return ""
	}
	return v.Text(string(f.Kind), f.Values)
}

// Facts are the sentences of facts, in their order.
func (v Voice) Facts(fs []fact.Fact) []string {
	var out []string
	for _, f := range fs {
		out = append(out, v.Fact(f))
	}
	return out
}

// Text is the sentence of a key with its values. A key that the catalogue does
// not have is shown as ‹key›, and so is a value that is missing.
//
//go:noinline
func (v Voice) Text(key string, values ...fact.V) string {
	return v.fill(key, func(name string) argument {
		x, ok := lookup(values, name)
		if !ok {
			return missing(name)
		}
		return argument{v.Value(x), v.bareValue(x), chosen(x), x.N}
	})
}

// chosen is what a select goes by.
func chosen(x fact.Value) string {
	switch {
	case x.Is == fact.IsTank:
		return x.Unit
	case x.S == "" && (x.N != 0 || len(x.List) > 0 || x.Fact != nil):
		return "other"
	}
	return x.S
}

// bareValue is a value without its unit, and without the word km of a position.
func (v Voice) bareValue(x fact.Value) string {
	switch x.Is {
	case fact.IsQuantity:
		return v.digits(x.N, x.Unit, x.Digits)
	case fact.IsMark:
		return v.number(v.Shown(x.N+v.Behind, "km"), x.Digits)
	}
	return v.Value(x)
}

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
		return v.values(x.List)
	case fact.IsFact:
		return v.clause(x.Fact)
	}
	return Quoted(x.S)
}

// Quoted is a text of others within one of ours: on one line, not too long, and a text that is written from right to left
// kept apart from what stands around it (UAX 9: FSI … PDI).
func Quoted(text string) string {
	text = plain.Text(text)
	if strings.ContainsFunc(text, func(r rune) bool {
		return unicode.In(r, unicode.Arabic, unicode.Hebrew, unicode.Syriac, unicode.Thaana, unicode.Nko)
	}) {
		return "\u2068" + text + "\u2069"
	}
	return text
}

func (v Voice) values(list []fact.Value) string {
	parts := make([]string, len(list))
	for i, x := range list {
		parts[i] = v.Value(x)
	}
	return v.List(parts)
}

func (v Voice) clause(f *fact.Fact) string {
	if f == nil {
		return ""
	}
	return v.Fact(*f)
}

// List joins texts as the language does: "a", "a and b", "a, b and c".
func (v Voice) List(parts []string) string {
	switch n := len(parts); n {
	case 0:
		return ""
	case 1:
		return parts[0]
	default:
		return v.word("list.and", "a", strings.Join(parts[:n-1], ", "), "b", parts[n-1])
	}
}

// Tank is what a tank is called within a sentence: as the catalogue calls it,
// or by the name of its own that the vehicle gives it.
func (v Voice) Tank(id, name string) string {
	key := "tank." + id
	usual := v.Has(key)
	if usual && (name == "" || name == Capital(Voice{}.word(key))) {
		return v.word(key)
	}
	if name == "" {
		return id
	}
	return name
}

// Place is what a kind of place is called within a sentence.
func (v Voice) Place(kind string) string {
	if key := "place." + kind; v.Has(key) {
		return v.word(key)
	}
	return kind
}
