package model

import "github.com/paulmach/orb"

// An Effect is something to be done because of what happened. The model says
// what; the page does it, and tells with a message what came of it.
type Effect interface{ isEffect() }

type (
	// AskPlan asks the planner for plan No of the trip as it is then. Typed: a
	// person may type on.
	AskPlan struct {
		No    int
		Typed bool
	}
	// SaveTrip keeps the trip for the next visit, SaveMarks what stands beside it.
	SaveTrip  struct{}
	SaveMarks struct{}
	// Locate asks the device where it is.
	Locate struct{}
	// MatchTrack puts a line on roads.
	MatchTrack struct{ Line orb.LineString }
	// FindOthers looks for other ways between two points.
	FindOthers struct{ Pair Pair }
	// ShowStop brings a stop into sight, ShowMap the map, ShowRoad the button of
	// the panel that is gone.
	ShowStop struct{ N int }
	ShowMap  struct{}
	ShowRoad struct{}
)

func (AskPlan) isEffect()    {}
func (SaveTrip) isEffect()   {}
func (SaveMarks) isEffect()  {}
func (Locate) isEffect()     {}
func (MatchTrack) isEffect() {}
func (FindOthers) isEffect() {}
func (ShowStop) isEffect()   {}
func (ShowMap) isEffect()    {}
func (ShowRoad) isEffect()   {}
