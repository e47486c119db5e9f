package model

import (
	"slices"

	"github.com/paulmach/orb"

	"ullage/planner/byroad"
)

// A Draft is a route being drawn: the points that a person set, and what they
// were before each step. What lies between two points is a leg: see [Legs].
type Draft struct {
	Points orb.LineString
	Before []orb.LineString // for undo
	After  []orb.LineString // for redo
	Chosen int              // number of the point that is chosen, from 1; 0: none
	Ways   *OtherWays       // of a leg; nil: not asked for
}

// OtherWays are ways that one may like better than the one that a draft takes.
type OtherWays struct {
	Leg   int  // from point Leg to the next, counted from 0
	Pair  Pair // these points
	Known bool // they have been looked for
	List  [][2]byroad.Leg
}

// step returns the draft after a change, which undo takes back.
func (d Draft) step(points orb.LineString) *Draft {
	return &Draft{Points: points, Before: append(slices.Clone(d.Before), d.Points)}
}

// point adds a point at the end.
func (d Draft) point(p orb.Point) *Draft {
	return d.step(append(slices.Clone(d.Points), p))
}

// insert puts a point before point i.
func (d Draft) insert(i int, p orb.Point) *Draft {
	if i < 0 || i > len(d.Points) {
		return &d
	}
	return d.step(slices.Insert(slices.Clone(d.Points), i, p))
}

// move puts point i elsewhere; an index outside the line changes nothing.
func (d Draft) move(i int, p orb.Point) *Draft {
	if i < 0 || i >= len(d.Points) {
		return &d
	}
	points := slices.Clone(d.Points)
	points[i] = p
	return d.step(points)
}

// choose chooses point i.
func (d Draft) choose(i int) *Draft {
	d.Ways = nil
	if d.Chosen = i + 1; i < 0 || i >= len(d.Points) {
		d.Chosen = 0
	}
	return &d
}

// remove takes the chosen point out.
func (d Draft) remove() *Draft {
	if d.Chosen < 1 || d.Chosen > len(d.Points) {
		return &d
	}
	return d.step(slices.Delete(slices.Clone(d.Points), d.Chosen-1, d.Chosen))
}

// undo takes the last step back; without one it changes nothing.
func (d Draft) undo() *Draft {
	if n := len(d.Before); n > 0 {
		return &Draft{Points: d.Before[n-1], Before: d.Before[:n-1], After: append(slices.Clip(d.After), d.Points)}
	}
	return &d
}

// redo makes the step that was taken back last.
func (d Draft) redo() *Draft {
	if n := len(d.After); n > 0 {
		return &Draft{Points: d.After[n-1], Before: append(slices.Clip(d.Before), d.Points), After: d.After[:n-1]}
	}
	return &d
}

// Leg is the leg that is spoken of: to the point that is chosen, else the last;
// -1 if there is none.
func (d Draft) Leg() int {
	switch n := len(d.Points); {
	case n < 2:
		return -1
	case d.Chosen > 0:
		return max(d.Chosen-2, 0)
	default:
		return n - 2
	}
}
