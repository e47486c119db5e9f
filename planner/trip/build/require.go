package build

import (
	"fmt"
	"slices"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// An Unusable error is about a required place that cannot be used.
type Unusable struct {
	Place    string
	WithinKm float64    // none of its services or nights is of use so near to the route
	Why      *fact.Fact // why it is left out; nil: not near enough
	Missing  bool       // the map data have no such place
}

func (e *Unusable) Error() string {
	why := fmt.Sprintf("none of its services or nights is of use within %v km of the route", e.WithinKm)
	if e.Missing {
		why = "the map data have no such place"
	} else if e.Why != nil {
		why = "it is left out (" + string(e.Why.Kind) + ")"
	}
	return fmt.Sprintf("trip: required place %s cannot be used: %s: remove it from the required places or change the trip", e.Place, why)
}

const (
	requiredOut     fact.Kind = "required.out"
	requiredFar     fact.Kind = "required.far"
	requiredMissing fact.Kind = "required.missing"

	// avoidedMissing: places to avoid, {list}, that the map data do not have.
	avoidedMissing fact.Kind = "avoided.missing"
)

// Fact says which place, and why.
func (e *Unusable) Fact() fact.Fact {
	if e.Missing {
		return fact.Of(requiredMissing, fact.V{"place": fact.Text(e.Place)})
	}
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

// require wants one of the stops at each required place: any pass, any stay.
func (b *gathering) require() error {
	for _, id := range b.Trip.Require {
		var list []string
		for _, s := range b.Around {
			if b.Calls[s.ID].Place.ID == id {
				list = append(list, s.ID)
			}
		}
		if len(list) == 0 {
			return b.unusable(id)
		}
		if len(list) > 1 && len(b.Lists) < planner.MostLists {
			b.Lists = append(b.Lists, list)
			continue
		}
		b.Around[slices.IndexFunc(b.Around, func(s planner.Stop) bool { return s.ID == list[0] })].Required = true
	}
	return nil
}

// known says what is wrong with the places that a trip names: a required one that
// the map data do not have is an error, avoided ones are told.
func (c *Course) known(places []trip.Place) (fact.Fact, error) {
	has := func(id string) bool {
		return slices.ContainsFunc(places, func(p trip.Place) bool { return p.ID == id })
	}
	for _, id := range c.Trip.Require {
		if !has(id) {
			return fact.Fact{}, &Unusable{Place: id, WithinKm: c.Trip.CorridorKm, Missing: true}
		}
	}
	missing := slices.DeleteFunc(slices.Clone(c.Trip.Avoid), has)
	if len(missing) == 0 || len(places) == 0 {
		return fact.Fact{}, nil
	}
	return fact.Of(avoidedMissing, fact.V{"list": fact.Texts(missing)}), nil
}
