package model

import (
	"strings"

	"github.com/paulmach/orb"

	"ullage/planner/byroad"
	"ullage/planner/fact"
)

// This file is about where the trip's route came from, and about leading it
// round roads that the vehicle may not use. A trip file holds the line, the
// points that it was drawn by and what it goes round, but no track.

// A KeptOrigin is kept for the next visit beside the trip.
type KeptOrigin struct {
	Track   orb.LineString `json:"track,omitempty"`
	Matched bool           `json:"matched,omitempty"`
	Count   int            `json:"count"` // points of the route that it is of
	Ends    [2]orb.Point   `json:"ends"`
}

// OriginOf is what is kept of a model so.
func OriginOf(m Model) KeptOrigin {
	o := KeptOrigin{Track: m.Track, Matched: m.Matched, Count: len(m.Trip.Route)}
	if o.Count > 0 {
		o.Ends = [2]orb.Point{m.Trip.Route[0], m.Trip.Route[o.Count-1]}
	}
	return o
}

type (
	// RoundAsked: put the route on roads, and so round what is closed to the vehicle.
	RoundAsked struct{}
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

// origin takes what is known of the last visit's route, if it is known of this one.
func (m Model) origin(o KeptOrigin) Model {
	of := OriginOf(m)
	if o.Count == of.Count && sameSpot(o.Ends[0], of.Ends[0]) && sameSpot(o.Ends[1], of.Ends[1]) {
		m.Track, m.Matched = o.Track, o.Matched
	}
	return m
}

// sameSpot allows for the digits that a trip file leaves out.
func sameSpot(a, b orb.Point) bool {
	const digits = 1e-5
	return a[0]-b[0] < digits && b[0]-a[0] < digits && a[1]-b[1] < digits && b[1]-a[1] < digits
}

// Barred says that the route goes where the vehicle may not go, and that
// something can be done about it.
func (m Model) Barred() bool {
	for _, c := range m.Plan.Cautions {
		if c.Kind == byroad.RouteBarred {
			return m.Roads.State == RoadsReady && m.Draft == nil
		}
	}
	return false
}

// unmatched is the line that is put on roads: that of the file, or the trip's own.
func (m Model) unmatched() orb.LineString {
	if len(m.Track) > 1 {
		return m.Track
	}
	return m.Trip.Route
}

func (RoundAsked) update(m Model) Model { return m.do(MatchTrack{m.unmatched()}) }

func (msg TrackMatched) update(m Model) Model {
	line := Joined(msg.Legs)
	if len(line) < 2 || !Same(msg.Track, m.unmatched()) {
		return m
	}
	m.Trouble = fact.Fact{}
	var left []string
	for _, l := range msg.Legs {
		left = append(left, m.Say.Facts(l.Closed)...)
	}
	if len(left) > 0 {
		m.Trouble = fact.Of("track.no_way_round", fact.V{"roads": fact.Text(strings.Join(left, "; "))})
	}
	m.Track, m.Matched = msg.Track, true
	m.Trip.Round = GoneRound(m.Say, msg.Legs)
	return m.reroute(line)
}

func (msg NotMatched) update(m Model) Model {
	m.Trouble = fact.Of("track.not_matched", fact.V{"why": fact.Text(msg.Why)})
	return m
}

func (TrackKept) update(m Model) Model {
	if len(m.Track) > 1 && m.Matched {
		m.Matched, m.Trip.Round = false, nil
		m = m.reroute(m.Track)
	}
	return m
}

// reroute plans the same trip along another line.
func (m Model) reroute(line orb.LineString) Model {
	m.Trip.Route, m.Trip.Keep = line, nil
	return m.ask()
}
