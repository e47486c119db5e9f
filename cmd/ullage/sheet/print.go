package sheet

import (
	"bufio"
	"io"

	"ullage/app/say"
	"ullage/planner/trip"
)

// An Input is what a sheet tells of.
type Input struct {
	Trip      trip.Trip
	Itinerary trip.Itinerary
	Onward    trip.Onward // of a trip that goes on from the road; else the zero value
	Sources   []string    // where the data are from, and what was wrong with them
}

// Print prints days, calls and levels, or why there is no plan.
func Print(w io.Writer, in Input, voice say.Voice) error {
	it := in.Itinerary
	p := &sheet{w: bufio.NewWriter(w), it: it, say: voice}
	p.remarks = repeated(it)
	p.head(in.Trip)
	p.road(in.Onward)
	if len(it.Days) == 0 {
		p.refusal()
	}
	for _, d := range it.Days {
		p.day(d)
	}
	p.foot(in.Sources)
	return p.w.Flush()
}
