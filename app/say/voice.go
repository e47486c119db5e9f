package say

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"ullage/planner/fact"
)

// A Voice says facts to somebody. It is compared by value. The zero value speaks
// English, in metric units, with plain spaces.
type Voice struct {
	Language string // en
	Units    string // "" or metric, british, american
	Thin     bool   // narrow no-break spaces before units and between thousands, as in print
}

// Fact is a fact as a sentence, or as the clause or the word that its kind is.
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
// not have is shown as ‹key›.
func (v Voice) Text(key string, values ...fact.V) string {
	m, ok := speaks(v.Language).catalog()[key]
	if !ok {
		return "‹" + key + "›"
	}
	var s strings.Builder
	v.write(&s, m, values, 0)
	return s.String()
}

// Has says whether the catalogue has a key.
func (v Voice) Has(key string) bool {
	_, ok := speaks(v.Language).catalog()[key]
	return ok
}

func (v Voice) write(s *strings.Builder, m message, values []fact.V, count float64) {
	for _, p := range m {
		switch {
		case p.count:
			s.WriteString(v.Count(count))
		case p.name == "":
			s.WriteString(p.text)
		case p.cases != nil:
			value, _ := lookup(values, p.name)
			v.write(s, v.choose(p, value), values, value.N)
		default:
			value, ok := lookup(values, p.name)
			text := v.Value(value)
			if !ok {
				text = "‹" + p.name + "›"
			}
			if p.how == "cap" {
				text = Capital(text)
			}
			s.WriteString(text)
		}
	}
}

func lookup(values []fact.V, name string) (fact.Value, bool) {
	for _, v := range values {
		if x, ok := v[name]; ok {
			return x, true
		}
	}
	return fact.Value{}, false
}

// choose finds the branch of a plural or a select that holds for a value.
func (v Voice) choose(p part, value fact.Value) message {
	want := []string{value.S}
	switch {
	case p.how == "plural":
		want = []string{"=" + plain(value.N, 0), speaks(v.Language).plural(value.N)}
	case value.Is == fact.IsTank:
		want = []string{value.Unit}
	case value.S == "" && value.N == 0 && len(value.List) == 0 && value.Fact == nil:
		want = []string{"none"}
	}
	for _, when := range append(want, "other") {
		for _, c := range p.cases {
			if c.when == when {
				return c.says
			}
		}
	}
	return nil
}

// Capital is a text with its first letter as a capital.
func Capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}
