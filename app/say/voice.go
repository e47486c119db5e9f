package say

import (
	"strings"

	"ullage/planner/fact"
)

// A Voice says facts to somebody. It is compared by value. The zero value speaks
// English, in metric units, with plain spaces.
type Voice struct {
	Language string  // en
	Units    string  // "" or metric, british, american
	Keep     bool    // no-break spaces before units, for text that is put in lines
	Behind   float64 // km of the trip before where marks are counted from: marks are told from its beginning
	Thin     bool    // narrow no-break spaces before units and between thousands, as in print
}

// thin is a narrow no-break space.
const thin = "\u202f"

func (v Voice) gap() string {
	switch {
	case v.Thin:
		return thin
	case v.Keep:
		return "\u00a0"
	}
	return " "
}

// Has says whether the catalogue has a key.
func (v Voice) Has(key string) bool {
	_, ok := speaks(v.Language).catalog()[key]
	return ok
}

// word is the sentence of a key whose values, if any, are texts. A key that the
// catalogue does not have is shown as ‹key›, and so is a value that is missing.
func (v Voice) word(key string, values ...string) string {
	return v.fill(key, func(name string) argument {
		for i := 0; i+1 < len(values); i += 2 {
			if values[i] == name {
				return argument{text: values[i+1], chosen: values[i+1]}
			}
		}
		return missing(name)
	})
}

func (v Voice) fill(key string, of func(name string) argument) string {
	l := speaks(v.Language)
	m, ok := l.catalog()[key]
	if !ok {
		return "‹" + key + "›"
	}
	var s strings.Builder
	m.write(&s, of, l.plural, func(n float64) string { return figures(n, 0) }, 0)
	return s.String()
}

// missing is what stands for a value that a fact does not have.
func missing(name string) argument { return argument{text: "‹" + name + "›"} }

func lookup(values []fact.V, name string) (fact.Value, bool) {
	for _, v := range values {
		if x, ok := v[name]; ok {
			return x, true
		}
	}
	return fact.Value{}, false
}
