package planner

import (
	"cmp"
	"strconv"
	"strings"
)

// name is what people call the tank.
func (t Tank) name() string { return cmp.Or(t.Name, t.ID) }

// amount prints so much of what is in the tank, with one decimal, or two
// digits where that would be nothing.
func (t Tank) amount(x float64) string {
	s := strconv.FormatFloat(x, 'f', 1, 64)
	if s == "0.0" {
		s = strconv.FormatFloat(x, 'g', 2, 64)
	}
	return strings.TrimSpace(s + " " + t.Unit)
}
