package plain_test

import (
	"strings"
	"testing"
	"unicode/utf8"

	"ullage/data/plain"
)

func TestText(t *testing.T) {
	for s, want := range map[string]string{
		"Quay Camp":                      "Quay Camp",
		"מחנה הנמל":                      "מחנה הנמל",
		"Camp\u202eyauQ":                 "CampyauQ",
		"\u2067a\u2069 b":                "a b",
		"two\nlines\t\x1b[31mred\x07":    "two lines [31mred",
		"  a \n b ":                      "a b",
		"65\u202fL":                      "65\u202fL",
		"bad \xff utf8":                  "bad utf8",
		"":                               "",
		"\u200e":                         "",
		strings.Repeat("ö", 300):         strings.Repeat("ö", plain.MostRunes-1) + "…",
		strings.Repeat("long ", 200_000): "",
	} {
		got := plain.Text(s)
		if want == "" && len(s) > 1000 {
			want = strings.Repeat("long ", 50) + "long…"
		}
		if got != want {
			t.Errorf("Text(%.40q) = %q, want %q", s, got, want)
		}
	}
}

func FuzzText(f *testing.F) {
	f.Add("a\u202eb\x00c")
	f.Fuzz(func(t *testing.T, s string) {
		got := plain.Text(s)
		if utf8.RuneCountInString(got) > plain.MostRunes || strings.ContainsAny(got, "\n\r\x1b\u202e\u2067") || plain.Text(got) != got {
			t.Errorf("Text(%q) = %q", s, got)
		}
	})
}
