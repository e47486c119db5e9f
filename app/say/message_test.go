package say

import (
	"strings"
	"testing"

	"ullage/planner/fact"
)

// sayIt says one sentence that is in no catalogue.
func sayIt(t *testing.T, sentence string, v fact.V) string {
	t.Helper()
	m, err := parse(sentence)
	if err != nil {
		t.Fatalf("%q: %v", sentence, err)
	}
	return spoken(m, v)
}

func spoken(m message, v fact.V) string {
	var s strings.Builder
	m.write(&s, func(name string) argument {
		x, ok := v[name]
		if !ok {
			return argument{text: "‹" + name + "›"}
		}
		return argument{Voice{}.Value(x), Voice{}.bareValue(x), chosen(x), x.N}
	}, languages["en"].plural, func(n float64) string { return figures(n, 0) }, 0)
	return s.String()
}

// Examples follow ICU's documentation of MessageFormat (unicode-org.github.io/icu, "Formatting Messages").
func TestMessage(t *testing.T) {
	for _, tc := range []struct {
		sentence string
		values   fact.V
		want     string
	}{
		{"plain", nil, "plain"},
		{"{n, plural, one {# day} other {# days}}", fact.V{"n": fact.Count(1)}, "1 day"},
		{"{n, plural, one {# day} other {# days}}", fact.V{"n": fact.Count(0)}, "0 days"},
		{"{n, plural, =0 {no day} =1 {a day} other {# days}}", fact.V{"n": fact.Count(0)}, "no day"},
		{"{n, plural, =0 {no day} =1 {a day} other {# days}}", fact.V{"n": fact.Count(1)}, "a day"},
		{"{n, plural, one {# day in {where}} other {# days}}", fact.V{"n": fact.Count(1), "where": fact.Text("Ellern")}, "1 day in Ellern"},
		{"at {name, select, none {the road} other {{name}}}", fact.V{"name": fact.Text("")}, "at the road"},
		{"at {name, select, none {the road} other {{name}}}", nil, "at the road"},
		{"at {name, select, none {the road} other {{name}}}", fact.V{"name": fact.Text("CG-2")}, "at CG-2"},
		{"{tank, select, battery {charge} other {fill}} {tank}", fact.V{"tank": fact.Tank("battery", "")}, "charge leisure battery"},
		{"{tank, cap} runs out", fact.V{"tank": fact.Tank("fresh", "")}, "Fresh water runs out"},
		{"{level, bare}/{room}, {from} to {to, bare}", fact.V{"level": fact.Quantity(7.5, "L", -1), "room": fact.Quantity(20, "L", -1), "from": fact.Mark(3, 0), "to": fact.Mark(9, 0)}, "7.5/20 L, km 3 to 9"},
		{"It''s '{quoted}' # and don't", nil, "It's {quoted} # and don't"},
		{"{missing} is shown", nil, "‹missing› is shown"},
	} {
		if got := sayIt(t, tc.sentence, tc.values); got != tc.want {
			t.Errorf("%q says %q, want %q", tc.sentence, got, tc.want)
		}
	}
}

func TestMessageRefused(t *testing.T) {
	for sentence, want := range map[string]string{
		"{": "no }", "{a": "no }", "}": "a } too many", "{}": "a value needs a name", "{a b}": "a value needs a name",
		"{n, plural, one {x}}": "no branch other", "{n, select, other {x}": "no } at the end", "{n, number}": "is not cap, bare, plural or select",
		"{n, plural, other x}": "a branch needs", "{n, plural, other {x}": "no }", "{n,": "no }",
	} {
		if _, err := parse(sentence); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", sentence, err, want)
		}
	}
}

// Nothing that a translator writes makes the reader fall.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"{n, plural, one {# day} other {# days}}", "'{'", "{a, select, none {} other {{a, cap}}}", "{{}}", "{a,", "''"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, sentence string) {
		m, err := parse(sentence)
		if err != nil {
			return
		}
		spoken(m, nil)
		m.names()
	})
}

func TestCatalogRefused(t *testing.T) {
	for text, want := range map[string]string{
		"a = x\na = y": "twice", "  lost": "none before it", "no sign": "is not key", "a = {": "line 1: a: no }",
	} {
		if _, err := readCatalog(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
	c, err := readCatalog("# remark\na = one\n  sentence\n\nb = {x} = y\n")
	if err != nil || len(c) != 2 || c["a"][0].text != "one sentence" || len(c["b"]) != 2 {
		t.Errorf("%v, %v", c, err)
	}
}

// names are the values that a message asks for, in order, each once.
func (m message) names() []string {
	var out []string
	seen := map[string]bool{}
	var walk func(message)
	walk = func(m message) {
		for _, p := range m {
			if p.name != "" && !seen[p.name] {
				seen[p.name] = true
				out = append(out, p.name)
			}
			for _, c := range p.cases {
				walk(c.says)
			}
		}
	}
	walk(m)
	return out
}
