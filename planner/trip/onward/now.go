package onward

import (
	"github.com/paulmach/orb"

	"ullage/planner/fact"
	"ullage/planner/trip"
)

// This file is a trip on the road: what is behind becomes history, what the
// gauges show becomes the levels, and the rest is a trip of its own.

// Now is where and when somebody on the road is, and what the vehicle shows.
type Now struct {
	Km     *float64         `json:"km,omitempty"`     // along the trip's route; nil: At says it
	At     *orb.Point       `json:"at,omitempty"`     // the nearest pass of the route counts
	Time   trip.Moment      `json:"time"`             // local: 2026-06-13T14:20
	Gauges map[string]Shown `json:"gauges,omitempty"` // by tank; a tank without one is as planned
	Closed []string         `json:"closed,omitempty"` // ids of places that are of no use
	Called map[string]bool  `json:"called,omitempty"` // by stop: whether it was called at; one that is not named was, if it lies behind

	here, min float64 // where that is along the route, and when: minutes since 00:00 of day one
}

// Shown is what a gauge shows.
type Shown struct {
	Kind   string  `json:"kind"` // litres (a number in the tank's unit), percent, quarters, lamp
	Value  float64 `json:"value"`
	LampAt float64 `json:"lamp_at,omitempty"` // the level where the lamp changes; 0: the tank's reserve
}

const (
	// offRouteKm: who is farther off than this should draw a new route.
	offRouteKm = 50.0
	// hereKm: nearer than this is the same spot of the route.
	hereKm = 0.5
	// lastHourMin is left of the day for a place for the night, however late it is.
	lastHourMin = 60.0
)

// Kinds of what does not fit together.
const (
	wantNow   fact.Kind = "onward.want_now"
	tooEarly  fact.Kind = "onward.too_early"
	wantPlace fact.Kind = "onward.want_place"
	offRoute  fact.Kind = "onward.off_route"
	pastEnd   fact.Kind = "onward.past_end"
	noPlan    fact.Kind = "onward.no_plan"
	noTank    fact.Kind = "onward.no_tank"
	badGauge  fact.Kind = "onward.gauge"
)

// minute is a local time in minutes since 00:00 of the trip's first day.
func minute(t trip.Trip, now trip.Moment) (float64, error) {
	switch m, ok := now.Since(t.Start); {
	case !ok:
		return 0, fact.Fail(nil, wantNow, fact.V{"found": fact.Text(string(now)), "example": fact.Text("2026-06-13T14:20")})
	case m < 0:
		return 0, fact.Fail(nil, tooEarly, fact.V{"day": fact.Date(string(now)[:len("2026-06-13")]), "date": t.Start.Says()})
	default:
		return m, nil
	}
}
