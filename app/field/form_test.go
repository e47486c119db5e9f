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

// What the form takes a trip file may hold: one range says both.
func TestFormAndFileAgree(t *testing.T) {
	for _, units := range []string{"", "british", "american"} {
		for _, f := range Of(sample.Trip(), trip.Fleet(), say.Voice{Units: units}) {
			for _, text := range []string{"0", "0.01", "0.1", "0.5", "1", "2", "5", "20", "21", "80", "81", "130", "365", "366", "1240", "2000", "5000", "11023", "1000000"} {
				got, wrong := f.Set(sample.Trip(), text)
				if f.Input != "number" && f.Input != "whole" || !wrong.Nothing() {
					continue
				}
				if got.Stays.MaxNights = 0; f.Key == "max_nights" { // fewest and most are held against each other by the file alone
					got.Stays.MinNights = 0
				}
				if err := got.Validate(); err != nil {
					t.Errorf("the form takes %s for %s: %v", text, f.Key, err)
				}
			}
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
