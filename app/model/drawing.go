package model

import "github.com/paulmach/orb"

// This file draws a route by points.

type (
	// DrawBegan begins a drawing, or goes on with the trip's.
	DrawBegan struct{}
	// DrawnPoint adds a point at the end, DrawnInsert before point Index,
	// DrawnMove moves one.
	DrawnPoint  struct{ Point orb.Point }
	DrawnInsert struct {
		Index int
		Point orb.Point
	}
	DrawnMove struct {
		Index int
		Point orb.Point
	}
	// DrawnChoice chooses a point, DrawnRemove takes the chosen one out.
	DrawnChoice struct{ Index int }
	DrawnRemove struct{}
	// DrawnScale: a pixel of the map is so many metres.
	DrawnScale struct{ Metres float64 }
	// DrawUndone takes a step back, DrawRedone makes it again, DrawCleared takes all points out.
	DrawUndone  struct{}
	DrawRedone  struct{}
	DrawCleared struct{}
	// DrawEnded takes the drawn route (Keep) or leaves the trip's as it was.
	DrawEnded struct{ Keep bool }
)

func (DrawBegan) update(m Model) Model {
	if m.Draft = (&Draft{}); !m.Elsewhere() {
		m.Draft.Points = m.Trip.Points
	}
	return m.do(ShowMap{})
}

func (msg DrawnPoint) update(m Model) Model {
	return m.redraw(func(d Draft) *Draft { return d.point(msg.Point) })
}

func (msg DrawnInsert) update(m Model) Model {
	return m.redraw(func(d Draft) *Draft { return d.insert(msg.Index, msg.Point) })
}

func (msg DrawnMove) update(m Model) Model {
	return m.redraw(func(d Draft) *Draft { return d.move(msg.Index, msg.Point) })
}

func (msg DrawnChoice) update(m Model) Model {
	return m.redraw(func(d Draft) *Draft { return d.choose(msg.Index) })
}

func (DrawnRemove) update(m Model) Model { return m.redraw(Draft.remove) }
func (DrawUndone) update(m Model) Model  { return m.redraw(Draft.undo) }
func (DrawRedone) update(m Model) Model  { return m.redraw(Draft.redo) }
func (DrawCleared) update(m Model) Model {
	return m.redraw(func(d Draft) *Draft { return d.step(nil) })
}

// redraw takes a step of the drawing, if there is one. What is drawn so far
// outlasts a reload.
func (m Model) redraw(step func(Draft) *Draft) Model {
	if m.Draft == nil {
		return m
	}
	was := m.Draft.Points
	m.Draft = step(*m.Draft)
	if !Same(was, m.Draft.Points) {
		m = m.do(SaveTrip{})
	}
	return m
}

func (msg DrawnScale) update(m Model) Model {
	if m.Draft != nil {
		m.Scale = msg.Metres
	}
	return m
}

func (msg DrawEnded) update(m Model) Model {
	if m.Draft == nil {
		return m
	}
	points, legs := m.Draft.Points, m.Legs.Of(m.Draft.Points)
	m.Draft = nil
	if line := Joined(legs); msg.Keep && len(line) > 1 {
		name := m.renamed(points)
		m = RouteRead{File{Name: m.Say.Text("draw.name"), Kind: "route", Count: len(line)}, line}.update(m)
		m.Trip.Name, m.Trip.Points, m.Track, m.Trip.Round = name, ShownAt(points, legs), nil, GoneRound(m.Say, legs)
	}
	return m.do(SaveTrip{})
}
