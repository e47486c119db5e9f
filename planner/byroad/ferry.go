package byroad

import (
	"fmt"

	"ullage/geo/road"
	"ullage/geo/road/net"
	"ullage/planner/trip"
)

// This file holds what is different where the course goes by ferry.

// boardMin is from joining the queue to casting off, and off the ship again: 30
// to 60 min before departure are advised with a vehicle (curiousexpeditions.org);
// the lower of them, since where a ferry is part of a road they are short.
const boardMin = 30

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
			if sea := a.atSea(s.Steps[from]); sea != a.atSea(s.Steps[i]) {
				add(road.Stretch{Steps: s.Steps[from:i]}, sea)
				from = i
			}
		}
		if len(s.Steps) == 0 {
			add(s, false)
		} else {
			add(road.Stretch{Steps: s.Steps[from:]}, a.atSea(s.Steps[from]))
		}
	}
	return out
}

// atSea says that a step is on a ferry.
func (a *asked) atSea(s net.Step) bool { return a.g.network.Road(s.Edge()).Class == net.Ferry }

// crossing is a ferry of the course with its minutes: those of the time table
// where every piece states them, else an estimate, and what boarding takes.
func (a *asked) crossing(r run, lengthKm float64) trip.Crossing {
	sails, board, stated := r.s/60, boardMin, true
	if r.fromM == 0 { // a trip that goes on at sea has boarded
		board = 0
	}
	c := trip.Crossing{Ferry: trip.Ferry{FromKm: a.km(r.fromM, lengthKm), ToKm: a.km(r.fromM+r.m, lengthKm), Min: sails + float64(board)}}
	for _, s := range r.Steps {
		way := a.g.network.Road(s.Edge())
		stated = stated && way.Kmh[s.Dir&1] > 0
		if c.Name == "" {
			c.Name = way.Name
		}
	}
	c.Basis = fmt.Sprintf("%.0f min of crossing as the map data say, about %d to board", sails, board)
	if !stated {
		c.Basis = fmt.Sprintf("an estimate: the map data do not say how long it sails; about %.0f min of crossing, %d to board", sails, board)
	}
	return c
}

// longS is a detour that is looked at for ferries, which take minutes.
const longS = 600

// sails names the ferry on the way to a place; "" if there is none. A call there would be a
// voyage of its own, with its fare and its timetable: who wants it draws the route.
func (a *asked) sails(d road.Detour, place road.Spot) string {
	if !a.g.ferries || d.ExtraS < longS {
		return ""
	}
	path, err := a.ask.Route(a.own.Snap(a.line.At(1000*a.km(d.LeaveM, a.line.LengthM()/1000)), 2*offM), place)
	if err != nil {
		return ""
	}
	for _, s := range path.Steps {
		if a.atSea(s) {
			if name := a.g.network.Road(s.Edge()).Name; name != "" {
				return name
			}
			return "without a name"
		}
	}
	return ""
}

// hasFerries says that some edge of a network is a ferry.
func hasFerries(network *net.Network) bool {
	for e := range uint32(network.Edges()) {
		if network.Road(e).Class == net.Ferry {
			return true
		}
	}
	return false
}

// detours asks for detours between the ferries of the course, so that none
// leaves it before one and joins it after.
func (a *asked) detours(places []road.Spot, opt road.DetourOptions) ([]road.Detour, error) {
	var out []road.Detour
	for i := 0; i < len(a.runs); i++ {
		var land road.Course
		begin := a.runs[i].fromM
		for ; i < len(a.runs) && !a.runs[i].sea; i++ {
			land = append(land, a.runs[i].Stretch)
		}
		if len(land) == 0 {
			continue
		}
		found, err := a.ask.Detours(a.ctx, land, places, opt)
		if err != nil {
			return nil, err
		}
		for _, d := range found {
			d.LeaveM, d.RejoinM = d.LeaveM+begin, d.RejoinM+begin
			out = append(out, d)
		}
	}
	return out, nil
}
