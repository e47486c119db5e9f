package byroad

import (
	"context"

	"ullage/geo"
	"ullage/geo/road"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Own choices, without source.
const (
	sections = 40   // of different speed on a route, at most about
	sectionM = 2000 // the shortest
)

// asked answers the questions of one trip. It keeps what it needs of the
// guide, which other questions may change.
type asked struct {
	g      *Guide
	ctx    context.Context
	trip   trip.Trip
	own    *road.Router
	ask    *road.Query
	course road.Course
	runs   []run // of course
	line   *geo.Line
	rule   rule
}

// Course matches the route to roads and measures it.
func (a *asked) Course(t trip.Trip, lengthKm float64) (trip.Course, error) {
	g := a.g
	a.trip = t
	if err := g.vehicle(a.ctx, t.Vehicle); err != nil {
		return trip.Course{}, err
	}
	if err := g.match(a.ctx, t.Route); err != nil {
		return trip.Course{}, err
	}
	a.own, a.ask, a.course = g.own, g.ask, g.course
	line, err := geo.Measure(t.Route)
	if err != nil {
		return trip.Course{}, err
	}
	a.line = line
	a.rule = newRule(g.network, a.own, a.course, line)
	out := trip.Course{Cautions: cautions(a.own, a.course, a.rule)}
	clock := &paces{whole: lengthKm, least: max(sectionM/1000, lengthKm/sections)}
	a.runs = a.cut()
	for _, r := range a.runs {
		from, to := a.km(r.fromM, lengthKm), a.km(r.fromM+r.m, lengthKm)
		switch {
		case r.sea:
			out.Ferries = append(out.Ferries, a.crossing(r, lengthKm))
			clock.alone(to, r.s/60)
		case len(r.Steps) == 0:
			out.Off = append(out.Off, [2]float64{from, to})
			clock.alone(to, 60/t.Day.SpeedKmh*(to-from))
		default:
			m := r.fromM
			for i := range r.Steps {
				p := a.own.PathOf(r.Steps[i : i+1])
				m += p.LengthM
				clock.add(a.km(m, lengthKm), p.Seconds/60)
			}
		}
	}
	out.Pace = clock.done()
	return out, nil
}

func (a *asked) km(m, lengthKm float64) float64 {
	return min(max(a.rule.at(m)/1000, 0), lengthKm)
}

// A run is a piece of a course on land, or of one ferry.
type run struct {
	road.Stretch
	sea         bool
	fromM, m, s float64 // from the start of the course; length; seconds
}

// cut cuts the course where it goes on board and ashore.
func (a *asked) cut() []run {
	var out []run
	m := 0.0
	add := func(s road.Stretch, sea bool) {
		length, seconds := a.own.Measure(road.Course{s})
		out = append(out, run{s, sea, m, length, seconds})
		m += length
	}
	for _, s := range a.course {
		from := 0
		for i := 1; i < len(s.Steps); i++ {
			if sea := a.g.atSea(s.Steps[from]); sea != a.g.atSea(s.Steps[i]) {
				add(road.Stretch{Steps: s.Steps[from:i]}, sea)
				from = i
			}
		}
		if len(s.Steps) == 0 {
			add(s, false)
		} else {
			add(road.Stretch{Steps: s.Steps[from:]}, a.g.atSea(s.Steps[from]))
		}
	}
	return out
}

// boardMin is from joining the queue to casting off, and off the ship again: 30
// to 60 min before departure are advised with a vehicle (curiousexpeditions.org);
// the lower of them, since where a ferry is part of a road they are short.
const boardMin = 30

// crossing is a ferry of the course with its minutes: those of the time table
// where every piece states them, else an estimate, and what boarding takes.
func (a *asked) crossing(r run, lengthKm float64) trip.Crossing {
	sails, board, stated := r.s/60, float64(boardMin), true
	if r.fromM == 0 { // a trip that goes on at sea has boarded
		board = 0
	}
	c := trip.Crossing{Ferry: trip.Ferry{FromKm: a.km(r.fromM, lengthKm), ToKm: a.km(r.fromM+r.m, lengthKm), Min: sails + board}}
	for _, s := range r.Steps {
		way := a.g.network.Road(s.Edge())
		stated = stated && way.Kmh[s.Dir&1] > 0
		if c.Name == "" {
			c.Name = way.Name
		}
	}
	kind := SailsGuessed
	if stated {
		kind = SailsStated
	}
	c.Basis = fact.Of(kind, fact.V{"sails": fact.Span(sails), "board": fact.Span(board)})
	return c
}
