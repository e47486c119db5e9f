package say

import (
	"bytes"
	"flag"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"ullage/planner/fact"
)

var update = flag.Bool("update", false, "rewrite testdata/*.golden; read it before you commit it")

// sample is one value for each name that a sentence may ask for. A name means
// the same wherever it stands: add one here when a sentence needs a new one.
var sample = map[string]fact.Value{
	"a": fact.Text("a"), "b": fact.Text("b"), "weekday": fact.Term("weekday.5"), "wd": fact.Term("wd.5"), "day": fact.Count(12), "month": fact.Term("month.6"), "year": fact.Text("2026"),
}

// TestSentences shows every sentence in every language and unit system, each
// branch of it once. Read the golden aloud: would you say it so at a hire desk?
func TestSentences(t *testing.T) {
	for code, l := range languages {
		var out bytes.Buffer
		for _, key := range slices.Sorted(maps.Keys(l.catalog())) {
			m := l.catalog()[key]
			for _, name := range m.names() {
				if _, ok := sample[name]; !ok {
					t.Fatalf("%s: %s asks for {%s}: give sample in this file a value for it", code, key, name)
				}
			}
			for _, v := range branches(m) {
				seen := ""
				for _, system := range []string{"metric", "british", "american"} {
					text := Voice{Language: code, Units: system}.Text(key, v, sample)
					if strings.ContainsAny(text, "‹›") {
						t.Errorf("%s: %s says %q", code, key, text)
					}
					if text == seen {
						continue
					}
					if seen == "" {
						fmt.Fprintf(&out, "%s: %s\n", key, text)
					} else {
						fmt.Fprintf(&out, "%s %s: %s\n", strings.Repeat(" ", len(key)-min(len(key), len(system)+1)), system, text)
					}
					seen = text
				}
			}
		}
		file := "testdata/" + code + ".golden"
		if *update {
			if err := os.WriteFile(file, out.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil || !bytes.Equal(want, out.Bytes()) {
			t.Errorf("%s differs (%v); run with -update and read what changed", file, err)
		}
	}
}

// branches are values that lead through each branch of a sentence once.
func branches(m message) []fact.V {
	out := []fact.V{{}}
	var walk func(message, fact.V)
	walk = func(m message, above fact.V) {
		for _, p := range m {
			for i, c := range p.cases {
				v := maps.Clone(above)
				v[p.name] = leading(p, c.when)
				if i > 0 || len(above) > 0 {
					out = append(out, v)
				} else {
					out[0] = v
				}
				walk(c.says, v)
			}
		}
	}
	walk(m, fact.V{})
	return out
}

// leading is a value that leads into the branch when.
func leading(p part, when string) fact.Value {
	v := sample[p.name]
	switch {
	case p.how == "plural" && when == "one":
		v.N = 1
	case p.how == "plural" && when == "other":
		v.N = 3
	case p.how == "plural":
		fmt.Sscan(when[1:], &v.N)
	case when == "none":
		v = fact.Value{}
	case when == "other":
	case v.Is == fact.IsTank:
		v.Unit, v.S = when, ""
	default:
		v.S = when
	}
	return v
}
