package advice

import (
	"slices"
	"strings"

	"ullage/planner/fact"
)

// A HowTo says how a kind of stop is done, what can go wrong, and who decides
// where this advice and the place disagree.
type HowTo struct {
	ID       string    `json:"id"` // a tank id, or night, ferry, driving, heating, hot-water, frost, awning
	Title    fact.Fact `json:"title"`
	Care     fact.Fact `json:"care"` // the cautions in one line, for wherever it is done
	Steps    []Item    `json:"steps"`
	Cautions []Item    `json:"cautions"`
	Defer    fact.Fact `json:"defer"` // never left out
}

// Here is what is said wherever it is done: the care, and what the frost adds.
func (h HowTo) Here() []fact.Fact {
	out := []fact.Fact{h.Care}
	for _, i := range h.Cautions {
		if slices.Contains(i.If, IsFrost) {
			out = append(out, i.Says)
		}
	}
	return out
}

// A source is a how-to of the table.
type source struct {
	id              string
	care            row // when: each condition that holds is a value of its sentence
	steps, cautions []row
}

func (s source) howTo(has Has) HowTo {
	of := "howto." + s.id
	return HowTo{
		ID: s.id, Title: fact.Of(kind(of, "title"), nil), Care: s.careful(has),
		Steps: items(of+".step", s.steps, has), Cautions: items(of+".caution", s.cautions, has), Defer: fact.Of(kind(of, "defer"), nil),
	}
}

func (s source) careful(has Has) fact.Fact {
	v := fact.V{}
	for name, value := range s.care.values {
		v[name] = value
	}
	for _, c := range strings.Fields(s.care.when) {
		if has == nil || has(c) {
			v[c] = fact.Text(c)
		}
	}
	return fact.Of(kind("howto", s.id, "care"), v)
}
