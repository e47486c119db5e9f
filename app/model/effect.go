package model

import "github.com/paulmach/orb"

// An Effect is something to be done because of what happened. The model says
// what; the page does it, and tells with a message what came of it.
type Effect interface{ isEffect() }

type (
	// AskPlan asks the planner for plan No of the trip as it is then. Typed: a
	// person may type on. Field is the one that was just changed; "": none.
	AskPlan struct {
		No    int
		Typed bool
		Field string
	}
	// SaveTrip keeps the trip for the next visit, with what is half done of it;
	// SaveMarks what stands beside it.
	SaveTrip  struct{}
	SaveMarks struct{}
	// Reload starts the page again. Fork goes on beside what another tab keeps.
	Reload struct{}
	Fork   struct{}
	// SaveUnread gives what cannot be read as a file, SaveEverything all that is kept.
	// OpenFresh opens a fresh trip.
	SaveUnread     struct{ ID string }
	SaveEverything struct{}
	OpenFresh      struct{}
	// OpenDesk opens another trip that is kept, RemoveDesk takes it away.
	OpenDesk   struct{ ID string }
	RemoveDesk struct{ ID string }
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

func (AskPlan) isEffect()        {}
func (SaveTrip) isEffect()       {}
func (SaveMarks) isEffect()      {}
func (Reload) isEffect()         {}
func (Fork) isEffect()           {}
func (SaveUnread) isEffect()     {}
func (SaveEverything) isEffect() {}
func (OpenFresh) isEffect()      {}
func (OpenDesk) isEffect()       {}
func (RemoveDesk) isEffect()     {}
func (Locate) isEffect()         {}
func (MatchTrack) isEffect()     {}
func (FindOthers) isEffect()     {}
func (ShowStop) isEffect()       {}
func (ShowMap) isEffect()        {}
func (ShowRoad) isEffect()       {}
