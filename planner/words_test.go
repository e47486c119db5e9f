package planner

import "testing"

func TestOneOrMore(t *testing.T) {
	for text, want := range map[string]string{
		"stay 1 more night(s)":     "stay 1 more night",
		"stay 2 night(s) fewer":    "stay 2 nights fewer",
		"11 night(s)":              "11 nights",
		"1 night(s) and 3 stop(s)": "1 night and 3 stops",
		"no number(s)":             "no numbers",
		"plain":                    "plain",
	} {
		if got := OneOrMore(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
