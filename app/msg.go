package page

import (
	"github.com/paulmach/orb"

	"ullage/app/draw"
	"ullage/planner/trip"
)

// A Msg is something that happened. Every type in this file is one.
type Msg interface{ isMsg() }

type (
	// Opening: a file is about to be read.
	Opening struct{ Name string }
	// Progress of the file that is being read, 0 to 1.
	Progress struct{ Share float64 }
	// PlacesRead: the planner holds the places of a file. All earlier files
	// with places are replaced unless Add is set.
	PlacesRead struct {
		File   File
		Add    bool
		Ground string // GeoJSON to draw behind; "" is none
	}
	// GroundRead: the backdrop in a form that can be drawn.
	GroundRead struct{ Backdrop draw.Backdrop }
	// FleetRead: a file gave vehicles to choose from.
	FleetRead struct{ Fleet []trip.Vehicle }
	// RouteRead: a file gave a route, which replaces the trip's.
	RouteRead struct {
		File File
		Line orb.LineString
	}
	// TripRead: a trip file, or the trip of the last visit.
	TripRead struct {
		File File
		Trip trip.Trip
		Last bool // it is the one of the last visit
	}
	// OpenFailed: a file could not be read; everything else stays as it was.
	OpenFailed struct{ Name, Why string }

	// NotKept: this device could not keep something for the next visit.
	NotKept struct{ Why string }
	// NotSaved: a file could not be given to the person.
	NotSaved struct{ Why string }

	// Edited: a field holds this text now.
	Edited struct{ Field, Text string }
	// FerryAdded: what is typed of a ferry is one. FerryRemoved: one of the trip's is none.
	FerryAdded   struct{}
	FerryRemoved struct{ Index int }
	// FormToggled opens or closes the form.
	FormToggled struct{}
	// Afresh: plan without regard to the plan in use.
	Afresh struct{}
	// Avoided: plan without this place, or with it again.
	Avoided struct{ Place string }

	// Marks: what this machine remembers beside the trip.
	Marks struct {
		Units string   `json:"units,omitempty"`
		Ticks []string `json:"ticks,omitempty"` // sorted

		Gauges map[string]string `json:"gauges,omitempty"`
		Draft  orb.LineString    `json:"draft,omitempty"` // points of a route that is being drawn
	}
	// Ticked: an item of a checklist is done, or is not.
	Ticked struct{ Item string }
	// TicksCleared: a checklist is to be gone through again.
	TicksCleared struct{ List string }

	// ReportToggled opens or shuts the panel of the road; Now is this machine's time.
	ReportToggled struct{ Now string }
	// ReportPointed: here, on the map, nearest to this kilometre.
	ReportPointed struct {
		Point orb.Point
		Km    float64
	}
	// HereAsked: the device is to say where it is. HereFound, HereUnknown: it does, it does not.
	HereAsked struct{}
	HereFound struct {
		Point   orb.Point
		WithinM float64
	}
	HereUnknown struct{ Why error }
	// WentOn: plan from here. WentBack takes that back.
	WentOn   struct{}
	WentBack struct{}

	// Answered: a plan or a better one. Last says that no better one follows;
	// the same one may come again with more to say about it.
	Answered struct {
		No   int
		Plan trip.Itinerary
		Last bool
	}
	// PlanFailed: no answer, and why.
	PlanFailed struct {
		No  int
		Why string
	}

	// PointedMin, PointedX, PointedKm move the cursor to a time, a share of the
	// strips' width, a position along the route.
	PointedMin struct{ Min float64 }
	PointedX   struct{ X float64 }
	PointedKm  struct{ Km float64 }
	// Stepped moves the cursor by shares of the width.
	Stepped struct{ By float64 }
	// Skipped moves the cursor to the next stop (1) or the one before (−1).
	Skipped struct{ By int }

	// DrawBegan, DrawnPoint, DrawnMove, DrawUndone, DrawCleared, DrawEnded are
	// the drawing of a route.
	DrawBegan  struct{}
	DrawnPoint struct{ Point orb.Point }
	DrawnMove  struct {
		Index int
		Point orb.Point
	}
	DrawUndone  struct{}
	DrawCleared struct{}
	// DrawEnded takes the drawn route (Keep) or leaves the trip's as it was.
	DrawEnded struct{ Keep bool }

	// VersionWaits: a new version of the page is ready.
	VersionWaits struct{}
	// OfflineReady: the page can start without a network.
	OfflineReady struct{}
)

func (Opening) isMsg()       {}
func (Progress) isMsg()      {}
func (PlacesRead) isMsg()    {}
func (GroundRead) isMsg()    {}
func (FleetRead) isMsg()     {}
func (RouteRead) isMsg()     {}
func (TripRead) isMsg()      {}
func (OpenFailed) isMsg()    {}
func (NotSaved) isMsg()      {}
func (NotKept) isMsg()       {}
func (Edited) isMsg()        {}
func (FerryAdded) isMsg()    {}
func (FerryRemoved) isMsg()  {}
func (FormToggled) isMsg()   {}
func (Avoided) isMsg()       {}
func (Afresh) isMsg()        {}
func (Marks) isMsg()         {}
func (Ticked) isMsg()        {}
func (TicksCleared) isMsg()  {}
func (ReportToggled) isMsg() {}
func (ReportPointed) isMsg() {}
func (HereAsked) isMsg()     {}
func (HereFound) isMsg()     {}
func (HereUnknown) isMsg()   {}
func (WentOn) isMsg()        {}
func (WentBack) isMsg()      {}
func (Answered) isMsg()      {}
func (PlanFailed) isMsg()    {}
func (PointedMin) isMsg()    {}
func (PointedX) isMsg()      {}
func (PointedKm) isMsg()     {}
func (Stepped) isMsg()       {}
func (Skipped) isMsg()       {}
func (DrawBegan) isMsg()     {}
func (DrawnPoint) isMsg()    {}
func (DrawnMove) isMsg()     {}
func (DrawUndone) isMsg()    {}
func (DrawCleared) isMsg()   {}
func (DrawEnded) isMsg()     {}
func (VersionWaits) isMsg()  {}
func (OfflineReady) isMsg()  {}
