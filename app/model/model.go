package model

import (
	"maps"
	"slices"

	"github.com/paulmach/orb"

	"ullage/app/draw"
	"ullage/app/say"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// A Model is all that the page knows, in parts of one idea each. It is a value:
// [Update] returns a new one and never changes what an old one points to.
type Model struct {
	Say   say.Voice // what is shown and typed is in its units
	Fleet []trip.Vehicle
	Trip  trip.Trip // what was last valid; Format "" is no trip yet

	Opened
	Form
	Planned
	Drawing
	Roads  Roads
	Origin // of the trip's route
	OnRoad
	Kept
	Keeping

	Waiting bool      // a new version of the page is ready
	Trouble fact.Fact // something that does not stop the plan
	Offline bool      // the page can start without a network

	todo []Effect
}

// Opened is what was read from files.
type Opened struct {
	Files    []File        // in the order they were opened
	Ground   string        // the backdrop as GeoJSON, for the map
	Backdrop draw.Backdrop // the same, for the drawn overview
}

// A File is a set of places or a route that was opened.
type File struct {
	Name   string
	Kind   string    // places, route, trip
	Count  int       // places or points
	Date   trip.Date // of the data: 2025-01-19; "" is unknown
	OSM    bool      // the attribution of OpenStreetMap is due
	Sample bool      // the invented island, not the world
	Notes  []fact.Fact
	Box    [4]float64 // of places: west, south, east, north
	Climb  [2]float64 // metres that a route rises and falls; 0 is not known
}

// A Form is what is typed.
type Form struct {
	Editing bool                 // it is open
	Typed   map[string]string    // text of fields, as typed, until the trip says the same
	Wrong   map[string]fact.Fact // what is wrong with it, by field
}

// Phase is what the page is busy with; its value is the status line's
// data-state.
type Phase string

const (
	Loading  Phase = "loading"  // a file is being read
	Planning Phase = "planning" // asked, no answer yet
	Ready    Phase = "planned"
	Refused  Phase = "refused" // it is proven that no plan exists
	Failed   Phase = "error"
)

// Planned is the plan, what became of asking for it, and the moment looked at.
type Planned struct {
	Phase    Phase
	Reading  string    // the file that is being read; "": the page itself
	Progress float64   // of it, 0 to 1; 0 is unknown
	Failure  fact.Fact // why the phase is Failed

	Plan   trip.Itinerary // the last answer, shown until a newer one is there
	Axis   draw.Axis      // of the plan
	Wanted int            // number of the plan last asked for
	Shown  int            // number of the plan shown
	Cursor float64        // minutes since 00:00 of day one
}

// Drawing is the route being drawn.
type Drawing struct {
	Draft *Draft  // nil: none is
	Legs  Legs    // as far as known
	Scale float64 // of the map, metres a pixel
}

// Roads is what the page knows of the roads of its places.
type Roads struct {
	State RoadState
	Share float64     // that is read
	Why   string      // they are not
	Notes []fact.Fact // what is left out of them
}

// RoadState is the data-state of the line that says so; "": nobody asked.
type RoadState string

const (
	RoadsComing RoadState = "reading"
	RoadsReady  RoadState = "ready"
	RoadsNone   RoadState = "none"
	RoadsBroken RoadState = "error"
)

// Origin is where the trip's route came from.
type Origin struct {
	Track   orb.LineString `json:"track,omitempty"`   // the line that was put on roads, or can be; nil: the route was drawn here, or is the trip's own
	Matched bool           `json:"matched,omitempty"` // the trip's route is Track put on roads
}

// OnRoad is what somebody on the way says.
type OnRoad struct {
	Report  *Report     // nil: nothing
	Resumes *KeptReport // of the last visit, until there is a plan again
	News    []fact.Fact // what the last readings taught
	Before  *Before     // the last plan from the road
}

// A Report is where somebody is, when, what the gauges show and what is closed.
// Texts are as typed, by the key of their control.
type Report struct {
	Said   map[string]string
	At     *orb.Point // chosen on the map, or said by the device; nil: the kilometre counts
	Asking bool       // the device is to say where it is
	Device fact.Fact  // what it said
	Lost   fact.Fact  // why it says nothing
	Clock  bool       // the time is that of a clock, not of the plan
	Closed []string   // ids of places
	Wrong  fact.Fact
}

func (k KeptReport) report() Report {
	return Report{Said: k.Said, At: k.At, Clock: k.Clock, Closed: k.Closed}
}

// Before is what was there before a plan from the road, with what was said:
// who takes it back corrects a reading and goes on again.
type Before struct {
	Trip   trip.Trip
	Report Report
	Ticks  []string
	Origin Origin
}

// Kept is what this machine remembers beside the trip.
type Kept struct {
	Ticks  []string          // of checklists and of stops, sorted: set-off/gas, stop/n12
	Gauges map[string]string // kind of gauge by vehicle and tank: ulmar/diesel
}

// Keeping is what the page knows of it.
type Keeping struct {
	Forgets   bool      // the browser keeps nothing for this page
	Overtaken bool      // another tab has changed the trip since
	Unread    []Unread  // what was kept and cannot be read here
	Missing   []Missing // maps that are not there
	Used      float64   // bytes of this device
	Most      float64   // that the page may use; 0: unknown
	Desks     []Desk    // other trips that are kept
}

// Unread is something kept that this version cannot read. It stays kept.
type Unread struct {
	ID   string    // of its bytes
	Says fact.Fact // what it is, and why
	Set  bool      // aside: a person goes on without it
}

// Missing is a map that is not on this device.
type Missing struct {
	Name string
	Full bool // there was no room for it: it is here until the page closes
}

// A Desk is a trip that is kept beside the one that is shown.
type Desk struct{ ID, Name string }

// A KeptReport is what was said on the road.
type KeptReport struct {
	Said   map[string]string `json:"said"`
	At     *orb.Point        `json:"at,omitempty"`
	Clock  bool              `json:"clock,omitempty"`
	Closed []string          `json:"closed,omitempty"`
}

// New returns the model of a page that has read nothing.
func New(fleet []trip.Vehicle) Model {
	return Model{Fleet: fleet, Say: say.Voice{Thin: true}, Planned: Planned{Phase: Loading}}
}

// HasTrip tells whether there is a trip to show.
func (m Model) HasTrip() bool { return m.Trip.Vehicle.ID != "" }

// HasPlan tells whether there is an itinerary with days to show.
func (p Planned) HasPlan() bool { return len(p.Plan.Days) > 0 }

// Calls are the calls of all days of a plan in their order.
func Calls(it trip.Itinerary) []trip.Call {
	var out []trip.Call
	for _, d := range it.Days {
		out = append(out, d.Calls...)
	}
	return out
}

// StopTicks is the list of ticks for stops, beside the checklists.
const StopTicks = "stop"

// Ticked tells whether a stop is ticked off.
func (k Kept) Ticked(c trip.Call) bool {
	_, ok := slices.BinarySearch(k.Ticks, StopTicks+"/"+c.Stop)
	return ok
}

// broken says an error of the program or of a file.
func broken(why string) fact.Fact {
	return fact.Of("status.failed", fact.V{"why": fact.Text(why)})
}

// do notes what is to be done, each thing once.
func (m Model) do(e Effect) Model {
	m.todo = append(slices.Clip(m.todo), e)
	return m
}

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

// wrong says what is wrong with a field, or that nothing is.
func (f Form) wrong(key string, what fact.Fact) Form {
	out := maps.Clone(f.Wrong)
	if out == nil {
		out = map[string]fact.Fact{}
	}
	if out[key] = what; what.Nothing() {
		delete(out, key)
	}
	f.Wrong = out
	return f
}

// A Msg is something that happened. What it does to the model stands beside
// its type.
type Msg interface{ update(Model) Model }

// Update returns the model after something happened, and what is to be done
// because of it. It is pure.
func Update(m Model, msg Msg) (Model, []Effect) {
	m = msg.update(m)
	m.Say.Behind = m.Trip.DoneKm
	todo := m.todo
	m.todo = nil
	return m, todo
}
