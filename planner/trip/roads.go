package trip

import (
	"github.com/paulmach/orb"

	"ullage/planner"
	"ullage/planner/fact"
)

// Roads say what a road network knows of a trip: how fast its route is driven,
// and what it takes to call at places beside it. A nil Roads knows nothing:
// detours are then straight distance × circuity, and the speed is the trip's.
type Roads interface {
	// Course puts the route of a trip on roads. lengthKm is its length as
	// drawn: all positions are along that.
	Course(t Trip, lengthKm float64) (Course, error)
	// Ways lists the ways to places from the course asked for last, any
	// number for each; a place without one is not known to the roads.
	Ways(places []*Place) ([]Way, error)
}

// A Course is a route on roads.
type Course struct {
	Pace     []planner.Pace // by section, ascending; none: the trip's speed
	Off      [][2]float64   // from km to km: off the roads, kept as drawn, ascending
	Ferries  []Crossing     // on ferries that take vehicles, ascending
	Cautions []fact.Fact    // what to take care of on the way
}

// A Way is what it takes to call at a place by road, or why that is not
// possible.
type Way struct {
	Place    int       // index among those asked for
	LeaveKm  float64   // where the route is left
	RejoinKm float64   // ≥ LeaveKm
	ThereKm  float64   // from there to the place
	Km, Min  float64   // more than driving on, there and back together
	Closed   fact.Fact // what keeps this vehicle from getting there, and where; else nothing
	Entry    Entry
}

// An Entry is where a vehicle leaves the roads for a place.
type Entry struct {
	Point orb.Point `json:"point"`
	Road  string    `json:"road,omitempty"` // its number or name; "" if it has none
}

// At is where along the route the place counts as lying: with half of the
// extra way before it, the place is reached after as many kilometres as on the
// road, however much of the route the way leaves out.
func (w Way) At() float64 { return w.LeaveKm + w.ThereKm - w.Km/2 }
