package model

import (
	"math"

	"ullage/app/draw"
	"ullage/planner/trip"
)

// This file moves the moment that all parts of the page look at.

type (
	// PointedMin, PointedX, PointedKm move the cursor to a time, a share of the
	// strips' width, a position along the route.
	PointedMin struct{ Min float64 }
	PointedX   struct{ X float64 }
	PointedKm  struct{ Km float64 }
	// Stepped moves the cursor by shares of the width.
	Stepped struct{ By float64 }
	// Skipped moves the cursor to the next stop (1) or the one before (−1).
	Skipped struct{ By int }
)

// The list of stops itself points by PointedMin, and stays where it is.
func (msg PointedMin) update(m Model) Model {
	m.Cursor = m.Axis.AtMin(msg.Min).Min
	return m
}

func (msg PointedX) update(m Model) Model { return m.lookAt(m.Axis.AtX(msg.X).Min) }

func (msg PointedKm) update(m Model) Model { return m.lookAt(m.Axis.AtKm(msg.Km).Min) }

func (msg Stepped) update(m Model) Model {
	x := m.Axis.AtMin(m.Cursor).X + msg.By
	return m.lookAt(m.Axis.AtX(math.Min(math.Max(x, 0), 1)).Min)
}

func (msg Skipped) update(m Model) Model { return m.lookAt(m.stopBeside(msg.By)) }

// lookAt moves the cursor, and has the stop that it comes to brought into sight.
func (m Model) lookAt(min float64) Model {
	was := StopAt(m.Plan, m.Cursor)
	m.Cursor = min
	if n := StopAt(m.Plan, min); n > 0 && n != was {
		m = m.do(ShowStop{n})
	}
	return m
}

// stopBeside returns the arrival at the next stop after the cursor, or before.
func (p Planned) stopBeside(by int) float64 {
	at := p.Cursor
	for _, n := range draw.Numbers(p.Plan.Days) {
		t := n.Call.ArriveMin
		if by > 0 && t > p.Cursor {
			return t
		}
		if by < 0 && t < p.Cursor {
			at = t
		}
	}
	return at
}

// StopAt returns the number of the last stop that a moment has reached; 0
// before the first.
func StopAt(it trip.Itinerary, min float64) (n int) {
	for _, s := range draw.Numbers(it.Days) {
		if s.Call.ArriveMin <= min {
			n = s.N
		}
	}
	return n
}
