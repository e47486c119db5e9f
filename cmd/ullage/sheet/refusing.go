package sheet

import (
	"io"

	"ullage/app/say"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// A Refusal prints a sheet without a plan as it becomes known: that there is none, the reasons, and at the end what
// would help and all else. In all it prints what [Print] prints.
type Refusal struct {
	p    *sheet
	in   Input
	said []fact.Fact // reasons
}

// NewRefusal says that there is no plan, or that none is known.
func NewRefusal(w io.Writer, in Input, voice say.Voice) (*Refusal, error) {
	r := &Refusal{p: newSheet(w, in.Itinerary, voice), in: in}
	r.p.head(in.Trip)
	r.p.behind(in.Onward)
	r.p.refused()
	return r, r.p.w.Flush()
}

// Tell says each reason once it is known.
func (r *Refusal) Tell(it trip.Itinerary) error {
	r.p.it = it
	for _, why := range it.Why {
		if !fact.Contains(r.said, why.Says) {
			r.said = append(r.said, why.Says)
			r.p.wrap("  - ", r.p.say.Fact(why.Says))
		}
	}
	return r.p.w.Flush()
}

// End prints the rest.
func (r *Refusal) End(it trip.Itinerary) error {
	if err := r.Tell(it); err != nil {
		return err
	}
	r.p.help()
	return r.p.background(r.in)
}
