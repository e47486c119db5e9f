package page

import (
	"slices"

	"github.com/paulmach/orb"
)

// A Draft is a route being drawn, and what it was before each step.
type Draft struct {
	Line   orb.LineString
	Before []orb.LineString
}

// step returns the draft after a change, which undo takes back.
func (d Draft) step(line orb.LineString) *Draft {
	return &Draft{line, append(slices.Clone(d.Before), d.Line)}
}

// point adds a vertex at the end.
func (d Draft) point(p orb.Point) *Draft {
	return d.step(append(slices.Clone(d.Line), p))
}

// move puts vertex i elsewhere; an index outside the line changes nothing.
func (d Draft) move(i int, p orb.Point) *Draft {
	if i < 0 || i >= len(d.Line) {
		return &d
	}
	line := slices.Clone(d.Line)
	line[i] = p
	return d.step(line)
}

// undo takes the last step back; without one it changes nothing.
func (d Draft) undo() *Draft {
	if n := len(d.Before); n > 0 {
		return &Draft{d.Before[n-1], d.Before[:n-1]}
	}
	return &d
}
