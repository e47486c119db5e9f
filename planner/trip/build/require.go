package build

import (
	"fmt"
	"slices"

	"ullage/planner/fact"
	"ullage/planner/trip"
)

// An Unusable error is about a required place that cannot be used.
type Unusable struct {
	Place    string
	WithinKm float64    // none of its services or nights is of use so near to the route
	Why      *fact.Fact // why it is left out; nil: not near enough
}

func (e *Unusable) Error() string {
	why := fmt.Sprintf("none of its services or nights is of use within %v km of the route", e.WithinKm)
	if e.Why != nil {
		why = "it is left out (" + string(e.Why.Kind) + ")"
	}
	return fmt.Sprintf("trip: required place %s cannot be used: %s: remove it from the required places or change the trip", e.Place, why)
}

const (
	requiredOut fact.Kind = "required.out"
	requiredFar fact.Kind = "required.far"
)

// Fact says which place, and why.
func (e *Unusable) Fact() fact.Fact {
	if e.Why == nil {
		return fact.Of(requiredFar, fact.V{"place": fact.Text(e.Place), "km": fact.Km(e.WithinKm, -1)})
	}
	return fact.Of(requiredOut, fact.V{"place": fact.Text(e.Place), "why": fact.Clause(*e.Why)})
}

func (b *gathering) unusable(place string) error {
	e := &Unusable{Place: place, WithinKm: b.Trip.CorridorKm}
	if i := slices.IndexFunc(b.Candidates, func(c trip.Candidate) bool { return c.Place == place }); i >= 0 {
		e.Why = b.Candidates[i].Excluded
	}
	return e
}

// require marks the first pass of each required place.
func (b *gathering) require() error {
	for _, id := range b.Trip.Require {
		i := slices.IndexFunc(b.Candidates, func(c trip.Candidate) bool { return c.Place == id && c.Excluded == nil })
		if i < 0 {
			return b.unusable(id)
		}
		for j := range b.Around {
			if b.Around[j].ID == b.Candidates[i].Stop {
				b.Around[j].Required = true
			}
		}
	}
	return nil
}
