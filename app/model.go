package page

import (
	"maps"

	"github.com/paulmach/orb"

	"ullage/app/draw"
	"ullage/app/say"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Phase is what the page is busy with; its value is the status line's
// data-state.
type Phase string

const (
	Loading  Phase = "loading"  // a file is being read
	Planning Phase = "planning" // asked, no answer yet
	Planned  Phase = "planned"
	Refused  Phase = "refused" // it is proven that no plan exists
	Failed   Phase = "error"
)

// A Model is all that the page knows. It is a value: [Update] returns a new
// one and never changes what an old one points to.
type Model struct {
	Fleet    []trip.Vehicle
	Trip     trip.Trip     // what was last valid; Format "" is no trip yet
	Files    []File        // in the order they were opened
	Ground   string        // the backdrop as GeoJSON, for the map
	Backdrop draw.Backdrop // the same, for the drawn overview

	Typed map[string]string // text of fields, as typed, until the trip says the same
	Wrong map[string]string // what is wrong with it, by field

	Phase    Phase
	Note     string  // about the phase: which file, which error
	Progress float64 // of loading, 0 to 1; 0 is unknown

	Plan   trip.Itinerary // the last answer, shown until a newer one is there
	Axis   draw.Axis      // of the plan
	Wanted int            // number of the plan last asked for
	Shown  int            // number of the plan shown
	Saves  int            // counts changes worth saving

	Cursor  float64 // minutes since 00:00 of day one
	Editing bool    // the form is open
	Draft   *Draft  // nil: no route is being drawn

	Report *Report  // nil: nobody says where they are
	News   []string // what the last readings on the road taught
	Before *Before  // the last plan from the road

	Say    say.Voice         // shown and typed in its units
	Ticks  []string          // of checklists and of stops, sorted: set-off/gas, stop/n12
	Gauges map[string]string // kind of gauge by vehicle and tank: ulmar/diesel
	Marks  int               // counts changes of these worth keeping

	Roads   Roads
	Legs    Legs           // of the route being drawn, as far as known
	Scale   float64        // of the map, metres a pixel
	Track   orb.LineString // the line that was put on roads, or can be; nil: the route was drawn here, or is the trip's own
	Matched bool           // the trip's route is Track put on roads

	Waiting bool   // a new version of the page is ready
	Trouble string // something that does not stop the plan; "" is none
	Offline bool   // the page can start without a network
}

// A File is a set of places or a route that was opened.
type File struct {
	Name   string
	Kind   string // places, route, trip
	Count  int    // places or points
	Date   string // of the data: 2025-01-19; "" is unknown
	OSM    bool   // the attribution of OpenStreetMap is due
	Sample bool   // the invented island, not the world
	Notes  []fact.Fact
	Box    [4]float64 // of places: west, south, east, north
	Climb  [2]float64 // metres that a route rises and falls; 0 is not known
}

// New returns the model of a page that has read nothing.
func New(fleet []trip.Vehicle) Model {
	return Model{Fleet: fleet, Phase: Loading, Say: say.Voice{Thin: true}}
}

// HasTrip tells whether there is a trip to show.
func (m Model) HasTrip() bool { return m.Trip.Vehicle.ID != "" }

// HasPlan tells whether there is an itinerary with days to show.
func (m Model) HasPlan() bool { return len(m.Plan.Days) > 0 }

// with returns a copy of a map with one entry changed; "" removes it.
func with(m map[string]string, key, value string) map[string]string {
	out := maps.Clone(m)
	if out == nil {
		out = map[string]string{}
	}
	if out[key] = value; value == "" {
		delete(out, key)
	}
	return out
}
