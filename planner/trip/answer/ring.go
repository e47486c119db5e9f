package answer

import (
	"slices"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/reason"
	"ullage/planner/trip"
)

// This file asks what would be if places had what their tags do not tell of: where that
// gives a plan, one can ring them.

// Kinds of whom to ring.
const (
	cureRing  fact.Kind = "cure.ring"  // {places}: ask whether one can {do} there
	ringPlace fact.Kind = "ring.place" // {name}, {phone}, {site} of the web
)

// untold says whether a place for the night may meet a need, for all that the data say.
func (n need) untold(p *trip.Place) bool {
	kind := trip.KindOfTank(n.tank)
	if p.Stay == nil || !kind.AtSites {
		return false
	}
	if kind.ByNight {
		return p.Stay.HookUp == trip.Unknown
	}
	o, _ := p.Offer(n.tank)
	return o.Answer == trip.Unknown && !o.Likely
}

// told is the place with a yes to a need.
func (n need) told(p trip.Place) trip.Place {
	if trip.KindOfTank(n.tank).ByNight {
		stay := *p.Stay
		stay.HookUp, p.Stay = trip.Yes, &stay
		return p
	}
	p.Offers = slices.DeleteFunc(slices.Clone(p.Offers), func(o trip.Offer) bool { return o.Tank == n.tank })
	p.Offers = append(p.Offers, trip.Offer{Tank: n.tank, Answer: trip.Yes, Guests: true})
	return p
}

// ring is the cure of ringing places that may meet needs, which a plan was found to
// call at for them; nothing if that is none.
func (b asker) ring(trial reason.Trial, needs ...need) fact.Fact {
	places := slices.Clone(b.Places)
	asked := map[string][]need{}
	for i := range places {
		p := &places[i]
		for _, n := range needs {
			if n.untold(p) {
				asked[p.ID] = append(asked[p.ID], n)
			}
		}
		for _, n := range asked[p.ID] {
			*p = n.told(*p)
		}
	}
	if len(asked) == 0 {
		return fact.Fact{}
	}
	tried, err := b.among(b.Trip, places)
	if err != nil {
		return fact.Fact{}
	}
	plan, ok := b.planned(trial, tried.Problem)
	if !ok {
		return fact.Fact{}
	}
	var list []*trip.Place
	for _, v := range plan.Visits {
		p := tried.Calls[v.Stop].Place
		if !slices.Contains(list, p) && slices.ContainsFunc(asked[p.ID], func(n need) bool { return n.used(v) }) {
			list = append(list, p)
		}
	}
	if len(list) == 0 {
		return fact.Fact{}
	}
	said := fact.Each(list[:min(len(list), mostNamed)], func(p *trip.Place) fact.Value {
		return fact.Clause(fact.Of(ringPlace, fact.V{"name": p.Called(), "phone": fact.Text(p.Contact.Phone), "site": fact.Text(p.Contact.Website)}))
	})
	what := fact.Of(cureRing, fact.V{"do": fact.Each(needs, b.does), "places": said, "n": fact.Count(max(len(list)-mostNamed, 0))})
	return b.costs(fact.List(fact.Clause(what)), changeTo(plan))
}

// used says whether a visit meets a need.
func (n need) used(v planner.Visit) bool {
	return v.Night && trip.KindOfTank(n.tank).ByNight || slices.ContainsFunc(v.Serve, func(y planner.Serve) bool { return y.Tank == n.tank })
}
