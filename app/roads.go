package page

import (
	"fmt"
	"math"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb"

	"ullage/app/job"
	"ullage/planner/byroad"
	"ullage/planner/trip"
)

// This file is what the page does with roads: reading them beside the plans,
// following them while a route is drawn, and putting a track on them.

// onRoads applies a message about roads.
func onRoads(m Model, msg Msg) Model {
	switch msg := msg.(type) {
	case RoadsReading:
		m.Roads = Roads{State: RoadsComing, Share: msg.Share}
	case RoadsRead:
		m = m.forget()
		if m.Roads = (Roads{State: RoadsNone}); msg.Roads.Roads > 0 {
			m.Roads.State = RoadsReady
			m = ask(m)
		}
	case RoadsFailed:
		m.Roads = Roads{State: RoadsBroken, Why: msg.Why}
	case Followed:
		if msg.Vehicle == sizeOf(m.Trip.Vehicle) {
			m.Legs = m.Legs.with(msg.Pairs, msg.Legs)
			if m.Draft != nil {
				m.Marks++ // its points are kept where they are on the road
			}
		}
	case TrackMatched:
		m = matched(m, msg)
	case OriginRead:
		m = recall(m, msg.Origin)
	case NotMatched:
		m.Trouble = fmt.Sprintf(word.notMatched, msg.Why)
	case TrackKept:
		if len(m.Track) > 1 && m.Matched {
			m.Matched, m.Trip.Round = false, nil
			m = reroute(m, m.Track)
		}
	}
	return m
}

// reroute plans the same trip along another line.
func reroute(m Model, line orb.LineString) Model {
	m.Trip.Route, m.Trip.Keep = line, nil
	return ask(m)
}

// Roads is what the page knows of the roads of its places.
type Roads struct {
	State string
	Share float64 // that is read
	Why   string  // they are not
}

// States of roads; the value is data-state of the line that says so.
const (
	RoadsComing = "reading"
	RoadsReady  = "ready"
	RoadsNone   = "none"
	RoadsBroken = "error"
)

type (
	// RoadsReading: roads are being read; ways to places are estimates until then.
	RoadsReading struct{ Share float64 }
	// RoadsRead: plans and drawings follow roads from now on, if there are any.
	RoadsRead struct{ Roads job.RoadsRead }
	// RoadsFailed: ways to places stay estimates.
	RoadsFailed struct{ Why string }
	// Followed: legs of the route being drawn are known, for a vehicle of that size.
	Followed struct {
		Vehicle size
		Pairs   []pair
		Legs    []byroad.Leg
	}
	// TrackMatched: the route's file, or the trip's own line, put on roads takes its place.
	TrackMatched struct {
		Track orb.LineString
		Legs  []byroad.Leg
	}
	// NotMatched: the route's file could not be put on roads.
	NotMatched struct{ Why string }
	// TrackKept: the route is as its file has it.
	TrackKept struct{}
)

func (RoadsReading) isMsg() {}
func (RoadsRead) isMsg()    {}
func (RoadsFailed) isMsg()  {}
func (Followed) isMsg()     {}
func (TrackMatched) isMsg() {}
func (NotMatched) isMsg()   {}
func (TrackKept) isMsg()    {}

// size is what a road must take of a vehicle.
type size struct{ height, width, length, mass float64 }

func sizeOf(v trip.Vehicle) size { return size{v.HeightM, v.WidthM, v.LengthM, v.MassKg} }

// roadsWords say in one line whether ways follow roads.
func roadsWords(r Roads) string {
	switch r.State {
	case RoadsComing:
		return fmt.Sprintf(word.roadsComing, int(math.Round(100*math.Min(math.Max(r.Share, 0), 1))))
	case RoadsReady:
		return word.roadsReady
	case RoadsNone:
		return word.roadsNone
	case RoadsBroken:
		return fmt.Sprintf(word.roadsBroken, r.Why)
	}
	return ""
}

// readRoads reads the roads of the places that are open.
func (p *Page) readRoads(ctx app.Context) {
	p.tell(ctx, RoadsReading{})
	p.client.Roads(
		func(done, total int64) { p.tell(ctx, RoadsReading{float64(done) / float64(max(total, 1))}) },
		func(r job.RoadsRead, err error) {
			if err != nil {
				p.tell(ctx, RoadsFailed{err.Error()})
				return
			}
			p.tell(ctx, RoadsRead{r})
		})
}

// followDraft asks for the legs of the draft that are not known. One question
// is out at a time: what is asked next is what is wanted by then.
func (p *Page) followDraft(ctx app.Context) {
	if p.m.Draft == nil || p.following {
		return
	}
	pairs := p.m.Legs.unknown(p.m.Draft.Points)
	if len(pairs) == 0 {
		return
	}
	of := sizeOf(p.m.Trip.Vehicle)
	p.following = p.ways.follow(pairs, func(legs []byroad.Leg) {
		ctx.Dispatch(func(ctx app.Context) {
			p.following = false
			if legs != nil {
				p.tell(ctx, Followed{of, pairs, legs})
			}
		})
	})
}

// Ways find legs. It is how the map asks while a point is dragged: past the
// page, whose drawing would cost each step some frames.
type Ways struct{ p *Page }

// follow asks for the legs of pairs; done gets them, or nil, on the page's
// thread. It returns false if there are no roads to ask.
func (w *Ways) follow(pairs []pair, done func([]byroad.Leg)) bool {
	return w.ask(pairs, false, func(legs []byroad.Leg, ok bool) {
		if !ok || len(legs) != len(pairs) {
			legs = nil
		}
		done(legs)
	})
}

// ask asks for the legs of pairs, or for the other ways of one. done gets them,
// or not ok, on the page's thread.
func (w *Ways) ask(pairs []pair, others bool, done func(legs []byroad.Leg, ok bool)) bool {
	if w == nil || w.p.m.Roads.State != RoadsReady {
		return false
	}
	var points orb.LineString
	for _, q := range pairs {
		points = append(points, q[0], q[1])
	}
	w.p.client.Follow(job.Follow{Vehicle: bare(w.p.m.Trip.Vehicle), Others: others, Points: points, WithinM: max(leastReachM, reachPx*w.p.m.Scale)},
		func(f job.Followed, err error) { done(f.Legs, err == nil) })
	return true
}

// A click means the nearest road within so many pixels, which on the map of a
// country are kilometres, and within so many metres in a village.
const (
	reachPx     = 25
	leastReachM = 250
)

// bare is a vehicle without its tanks: roads do not ask for them.
func bare(v trip.Vehicle) trip.Vehicle {
	return trip.Vehicle{HeightM: v.HeightM, WidthM: v.WidthM, LengthM: v.LengthM, MassKg: v.MassKg}
}
