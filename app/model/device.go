package model

import (
	"github.com/paulmach/orb"

	"ullage/planner/fact"
	"ullage/planner/trip"
	"ullage/planner/trip/onward"
)

// This file takes what the device says of where it is.

// Lost is why a device does not say where it is.
type Lost string

const (
	NotAllowed Lost = "onroad.lost.not_allowed" // the page may not know
	NoPosition Lost = "onroad.lost.no_position" // the device does not know
	TooLong    Lost = "onroad.lost.too_long"    // it found nothing in time
)

type (
	// HereAsked: the device is to say where it is. HereFound, HereUnknown: it does, it does not.
	HereAsked struct{}
	HereFound struct {
		Point   orb.Point
		WithinM float64
	}
	HereUnknown struct{ Why Lost }
)

func (HereAsked) update(m Model) Model {
	if m.Report == nil {
		return m
	}
	return m.reported(func(r Report) Report {
		r.Asking, r.Lost = true, fact.Fact{}
		return r
	}).do(Locate{})
}

func (msg HereUnknown) update(m Model) Model {
	return m.reported(func(r Report) Report {
		r.Asking, r.Lost = false, fact.Of(fact.Kind(msg.Why), nil)
		return r
	})
}

func (msg HereFound) update(m Model) Model {
	return m.reported(func(r Report) Report { return r.found(m, msg) })
}

// reported changes what was said, if anybody says anything.
func (m Model) reported(change func(Report) Report) Model {
	if m.Report == nil {
		return m
	}
	r := change(*m.Report)
	m.Report = &r
	return m.lookHere().do(SaveTrip{})
}

// offRouteKm is how far off the route is worth a word: a receiver and the line
// of a route both err by some hundred metres.
const offRouteKm = 0.5

func (r Report) found(m Model, msg HereFound) Report {
	r.Asking, r.Lost = false, fact.Fact{}
	km, off, err := onward.Locate(m.Trip, m.Plan, msg.Point, trip.Moment(r.Said[RoadTime]))
	if err != nil {
		r.Lost = roadTrouble(err)
		return r
	}
	r = *r.km(m, km)
	r.At, r.Said = &msg.Point, with(r.Said, RoadWhere, "")
	v := fact.V{"at": fact.Mark(km, -1), "within": short(msg.WithinM)}
	if r.Device = fact.Of("onroad.fix", v); off > offRouteKm {
		v["off"] = fact.Km(off, -1)
		r.Device = fact.Of("onroad.fix_off", v)
	}
	return r
}

// short is a short way in metres, a longer one in km.
func short(m float64) fact.Value {
	if m >= 1000 {
		return fact.Km(m/1000, -1)
	}
	return fact.Metres(m, -1)
}

// roadTrouble says an error of package onward to somebody on the road.
func roadTrouble(err error) fact.Fact {
	return fact.Of("onroad.trouble", fact.V{"why": fact.Why(err)})
}
