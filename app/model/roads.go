package model

import (
	"ullage/planner/byroad"
	"ullage/planner/fact"
)

// This file is about the roads of the map data.

type (
	// RoadsReading: roads are being read; ways to places are estimates until then.
	RoadsReading struct{ Share float64 }
	// RoadsRead: plans and drawings follow roads from now on, if there are any.
	RoadsRead struct {
		Roads int
		Notes []fact.Fact // what is left out of them
	}
	// RoadsFailed: ways to places stay estimates.
	RoadsFailed struct{ Why string }
	// Followed: legs of the route being drawn are known, for a vehicle of that size.
	Followed struct {
		Vehicle Size
		Pairs   []Pair
		Legs    []byroad.Leg
	}
)

func (msg RoadsReading) update(m Model) Model {
	m.Roads = Roads{State: RoadsComing, Share: msg.Share}
	return m
}

func (msg RoadsRead) update(m Model) Model {
	m.Drawing = m.forget()
	if m.Roads = (Roads{State: RoadsNone}); msg.Roads > 0 {
		m.Roads.State, m.Roads.Notes = RoadsReady, msg.Notes
		m = m.ask()
	}
	return m
}

func (msg RoadsFailed) update(m Model) Model {
	m.Roads = Roads{State: RoadsBroken, Why: msg.Why}
	return m
}

func (msg Followed) update(m Model) Model {
	if msg.Vehicle == SizeOf(m.Trip.Vehicle) {
		m.Legs = m.Legs.With(msg.Pairs, msg.Legs)
		if m.Draft != nil {
			m = m.do(SaveTrip{}) // its points are kept where they are on the road
		}
	}
	return m
}

// forget drops the legs of a draft: they are of other roads, or for another
// vehicle.
func (d Drawing) forget() Drawing {
	d.Legs = nil
	if d.Draft != nil && d.Draft.Ways != nil {
		draft := *d.Draft
		draft.Ways = nil
		d.Draft = &draft
	}
	return d
}
