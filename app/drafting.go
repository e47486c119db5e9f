package page

import (
	"maps"
	"slices"

	"github.com/paulmach/orb"

	"ullage/app/say"
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

// A pair is two points that follow each other.
type pair = [2]orb.Point

// Legs are the ways between pairs of points, as far as they are known: by
// road where there are roads. They hold for one vehicle.
type Legs map[pair]byroad.Leg

// with returns legs with more of them.
func (l Legs) with(pairs []pair, legs []byroad.Leg) Legs {
	out := maps.Clone(l)
	if out == nil {
		out = Legs{}
	}
	for i, p := range pairs {
		if i < len(legs) {
			out[p] = legs[i]
		}
	}
	return out
}

// unknown lists the pairs of points whose leg is not known.
func (l Legs) unknown(points orb.LineString) []pair {
	var out []pair
	for i := 1; i < len(points); i++ {
		p := pair{points[i-1], points[i]}
		if _, ok := l[p]; !ok && p[0] != p[1] && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

// of returns the legs of points in order. What is not known yet is straight.
func (l Legs) of(points orb.LineString) []byroad.Leg {
	var out []byroad.Leg
	for i := 1; i < len(points); i++ {
		leg, ok := l[pair{points[i-1], points[i]}]
		if !ok {
			leg = byroad.Leg{Line: orb.LineString{points[i-1], points[i]}, Drawn: true}
		}
		out = append(out, leg)
	}
	return out
}

// shownAt is where the points are drawn, and kept: on the road that a click
// meant. What a click means depends on the scale of the map; this does not.
func shownAt(points orb.LineString, legs []byroad.Leg) orb.LineString {
	out := points.Clone()
	for i, l := range legs {
		if n := len(l.Line); n > 0 && !l.Drawn {
			out[i], out[i+1] = l.Line[0], l.Line[n-1]
		}
	}
	return out
}

// joined is the line of legs, without repeated points.
func joined(legs []byroad.Leg) orb.LineString {
	var out orb.LineString
	for _, l := range legs {
		for _, p := range l.Line {
			if n := len(out); n == 0 || out[n-1] != p {
				out = append(out, p)
			}
		}
	}
	return out
}

// avoided lists the roads that legs go round, each once.
func avoided(v say.Voice, legs []byroad.Leg) []string {
	var out []string
	for _, l := range legs {
		for _, a := range v.Facts(l.Avoided) {
			if !slices.Contains(out, a) {
				out = append(out, a)
			}
		}
	}
	return out
}

// drawing applies a message about the route being drawn.
func drawing(m Model, msg Msg) Model {
	if _, ok := msg.(DrawBegan); ok {
		if m.Draft = (&Draft{}); !elsewhere(m) {
			m.Draft.Points = m.Trip.Points
		}
		return m
	}
	if m.Draft == nil {
		return m
	}
	was := m.Draft.Points
	switch msg := msg.(type) {
	case WaysAsked, WaysFound, WayTaken:
		m = otherWays(m, msg)
	case DrawnPoint:
		m.Draft = m.Draft.point(msg.Point)
	case DrawnInsert:
		m.Draft = m.Draft.insert(msg.Index, msg.Point)
	case DrawnMove:
		m.Draft = m.Draft.move(msg.Index, msg.Point)
	case DrawnChoice:
		m.Draft = m.Draft.choose(msg.Index)
	case DrawnRemove:
		m.Draft = m.Draft.remove()
	case DrawnScale:
		m.Scale = msg.Metres
	case DrawUndone:
		m.Draft = m.Draft.undo()
	case DrawRedone:
		m.Draft = m.Draft.redo()
	case DrawCleared:
		m.Draft = m.Draft.step(nil)
	case DrawEnded:
		points, legs := m.Draft.Points, m.Legs.of(m.Draft.Points)
		m.Draft = nil
		if line := joined(legs); msg.Keep && len(line) > 1 {
			name := renamed(m, points)
			m = Update(m, RouteRead{File{Name: word.drawn, Kind: "route", Count: len(line)}, line})
			m.Trip.Name, m.Trip.Points, m.Track, m.Trip.Round = name, shownAt(points, legs), nil, avoided(m.Say, legs)
		}
	}
	if m.Draft == nil || !same(was, m.Draft.Points) {
		m.Marks++ // what is drawn so far outlasts a reload
	}
	return m
}

type (
	// DrawnInsert puts a point before point Index.
	DrawnInsert struct {
		Index int
		Point orb.Point
	}
	// DrawnChoice chooses a point, DrawnRemove takes the chosen one out.
	DrawnChoice struct{ Index int }
	DrawnRemove struct{}
	// DrawnScale: a pixel of the map is so many metres.
	DrawnScale struct{ Metres float64 }
	// DrawRedone makes again what DrawUndone took back.
	DrawRedone struct{}
)

func (DrawnInsert) isMsg() {}
func (DrawnScale) isMsg()  {}
func (DrawnChoice) isMsg() {}
func (DrawnRemove) isMsg() {}
func (DrawRedone) isMsg()  {}
