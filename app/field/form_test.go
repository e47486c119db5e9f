package field

import (
	"strings"
	"testing"

	"ullage/app/model/sample"
	"ullage/app/say"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Every field takes back the text that it shows, in all units, refuses what is no
// number, and has its words.
func TestFieldsRoundTrip(t *testing.T) {
	for _, units := range []string{"", "british", "american"} {
		for _, f := range Of(sample.Trip(), trip.Fleet(), say.Voice{Units: units}) {
			testField(t, f)
		}
	}
}

func testField(t *testing.T, f Field) {
	text := f.Get(sample.Trip())
	got, wrong := f.Set(sample.Trip(), text)
	if !wrong.Nothing() {
		t.Errorf("%s does not take %q: %v", f.Key, text, wrong)
	} else if f.Get(got) != text {
		t.Errorf("%s: %q became %q", f.Key, text, f.Get(got))
	}
	if f.Input == "number" || f.Input == "whole" {
		for _, bad := range []string{"-1", "NaN"} {
			if _, wrong := f.Set(sample.Trip(), bad); wrong.Nothing() {
				t.Errorf("%s takes %s", f.Key, bad)
			}
		}
	}
	v := say.Voice{}
	words := v.Text("form."+f.Words(), fact.V{"tank": fact.Text("a tank")}) + v.Text("group."+f.Group)
	for _, o := range f.Options {
		words += o.Label
	}
	if strings.Contains(words, "‹") || f.Input == "" {
		t.Errorf("%s is called %q, input %q: give it an input, and what stands in ‹› a line in app/say/en.txt", f.Key, words, f.Input)
	}
}
