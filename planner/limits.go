package planner

import (
	"fmt"

	"ullage/planner/fact"
)

// What a problem may have at most: so much is planned in memory that grows no faster
// than the stops, some 10 kB each, and anything beyond is a mistake.
const (
	MostStops  = 50_000
	MostTanks  = 32 // also services of a stop, one a tank
	MostNights = 1000
)

// A TooMany error is about a problem that is larger than can be planned.
type TooMany struct {
	Kind       fact.Kind // of what
	Have, Most int
}

// Kinds of what there can be too many of.
const (
	ManyStops  fact.Kind = "many.stops"
	ManyTanks  fact.Kind = "many.tanks"
	ManyNights fact.Kind = "many.nights"
)

func (e *TooMany) Error() string {
	return fmt.Sprintf("planner: problem: %d %s, at most %d can be planned: leave some out", e.Have, e.Kind[len("many."):], e.Most)
}

// Fact says how many there are and may be.
func (e *TooMany) Fact() fact.Fact {
	return fact.Of(e.Kind, fact.V{"n": fact.Count(e.Have), "was": fact.Count(e.Most)})
}

// tooMany is the first of them; nil if there is none.
func (p *Problem) tooMany() error {
	nights := 0
	if p.Nights != nil {
		nights = p.Nights.Min
	}
	for _, x := range []TooMany{{ManyStops, len(p.Stops), MostStops}, {ManyTanks, len(p.Tanks), MostTanks}, {ManyNights, nights, MostNights}} {
		if x.Have > x.Most {
			return &x
		}
	}
	return nil
}
