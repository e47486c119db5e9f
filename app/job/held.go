package job

import (
	"time"

	"ullage/planner/trip"
	"ullage/planner/trip/build"
)

// A Handler does what requests ask. It holds the places of the files that
// were opened, each place once. It is for one goroutine at a time.
type Handler struct {
	places []trip.Place
	files  []Open // map data among them
	roads  roads
	hours  build.Hours
	most   int // places
	now    func() time.Time
	wanted func() bool // something else waits to be done
	first  func() bool // something that roads wait for is being done
}

// NewHandler returns a handler that holds no places.
func NewHandler() *Handler {
	never := func() bool { return false }
	return &Handler{hours: openHours(), most: mostPlaces, now: time.Now, wanted: never, first: never}
}

// keep holds a file of map data for its roads.
func (h *Handler) keep(o Open) {
	if !o.Add {
		h.files = nil
		h.roads.set(nil)
	}
	h.files = append(h.files, o)
}
