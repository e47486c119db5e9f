package sheet

import (
	"bufio"
	"io"

	"ullage/app/say"
	"ullage/planner/trip"
	"ullage/planner/trip/onward"
)

// An Input is what a sheet tells of.
type Input struct {
	Trip      trip.Trip
	Itinerary trip.Itinerary
	Onward    onward.Rest // of a trip that goes on from the road; else the zero value
	Sources   []string    // where the data are from, and what was wrong with them
}

// Print prints days, calls and levels, or why there is no plan.
func Print(w io.Writer, in Input, voice say.Voice) error {
	p := newSheet(w, in.Itinerary, voice)
	p.head(in.Trip)
	p.behind(in.Onward)
	if len(p.it.Days) == 0 {
		p.refused()
		p.reasons()
		p.help()
	}
	for _, d := range p.it.Days {
		p.day(d)
	}
	p.end()
	p.handBack()
	return p.background(in)
}

func newSheet(w io.Writer, it trip.Itinerary, voice say.Voice) *sheet {
	voice.Keep, voice.Behind = true, it.DoneKm
	return &sheet{w: bufio.NewWriter(w), it: it, say: voice, notes: repeated(it)}
}

// background prints what stands behind all that was said.
func (p *sheet) background(in Input) error {
	p.explained()
	p.uses()
	p.howTos()
	p.checklists()
	if len(in.Sources) > 0 {
		p.line("")
	}
	for _, s := range in.Sources {
		p.wrap("", s)
	}
	return p.w.Flush()
}
