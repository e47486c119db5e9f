package planner

import (
	"cmp"
	"strconv"
	"strings"
)

// Called is what people call the tank.
func (t Tank) Called() string { return cmp.Or(t.Name, t.ID) }

// Amount prints so much of what is in the tank, with one decimal, or two
// digits where that would be nothing.
func (t Tank) Amount(x float64) string {
	s := strconv.FormatFloat(x, 'f', 1, 64)
	if s == "0.0" {
		s = strconv.FormatFloat(x, 'g', 2, 64)
	}
	return strings.TrimSpace(s + " " + t.Unit)
}

// OneOrMore settles each "(s)" of a text by the number before it: "1 more
// night(s)" is one night, all else are nights.
func OneOrMore(text string) string {
	for {
		before, after, found := strings.Cut(text, "(s)")
		if !found {
			return text
		}
		ending := "s"
		if digit := strings.LastIndexAny(before, "0123456789"); digit >= 0 && before[digit] == '1' && (digit == 0 || before[digit-1] == ' ') {
			ending = ""
		}
		text = before + ending + after
	}
}
