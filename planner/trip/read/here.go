package read

import (
	"slices"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// This file says in one line why a stop is made.

// Kinds of why.
const (
	hereWish   fact.Kind = "here.wish"   // the traveller's
	hereLast   fact.Kind = "here.last"   // the last {tank} near the route
	hereNone   fact.Kind = "here.none"   // no {tank} near the route for {km}
	hereOut    fact.Kind = "here.out"    // {tank} would be out on {date}
	hereFull   fact.Kind = "here.full"   // {tank} would be full on {date}
	hereAgreed fact.Kind = "here.agreed" // {tank} has to come back as agreed
	hereCheap  fact.Kind = "here.cheap"  // the cheapest {tank} from here on
	hereNight  fact.Kind = "here.night"  // the cheapest night within reach today
	hereDay    fact.Kind = "here.day"    // the night, {km} from where the day began
	hereLeast  fact.Kind = "here.least"  // the plan costs least with it
)

// longWay without another offer is worth telling. Own choice.
const longWay = 40

// here fills in why each stop is made, of days in their order.
func (b reader) here(days []trip.Day, end planner.PlanEnd) {
	var calls []*trip.Call
	for i := range days {
		for k := range days[i].Calls {
			calls = append(calls, &days[i].Calls[k])
		}
	}
	began := 0.0 // km of the day's beginning
	for n, c := range calls {
		c.Here = b.why(c, calls[n+1:], began, end.Levels)
		if c.Night {
			began = c.Km
		}
	}
}

// why one stop is made, before others.
func (b reader) why(c *trip.Call, later []*trip.Call, began float64, end trip.Levels) fact.Fact {
	if slices.Contains(b.Trip.Require, c.Place) {
		return fact.Of(hereWish, nil)
	}
	if c.Night {
		if b.cheapestNight(c, began) {
			return fact.Of(hereNight, nil)
		}
		return fact.Of(hereDay, fact.V{"km": fact.Km(c.Km-began, 0)})
	}
	tasks := slices.Clone(c.Tasks) // the largest part of a tank first
	slices.SortStableFunc(tasks, func(x, y trip.Task) int {
		if x.Amount/b.tank(x.Tank).Capacity > y.Amount/b.tank(y.Tank).Capacity {
			return -1
		}
		return 1
	})
	for _, of := range []func(trip.Task) fact.Fact{
		func(t trip.Task) fact.Fact { return b.scarce(c, t) },
		func(t trip.Task) fact.Fact { return b.needed(t, later, end) },
		func(t trip.Task) fact.Fact { return b.cheap(c, t) },
	} {
		for _, t := range tasks {
			if f := of(t); !f.Nothing() {
				return f
			}
		}
	}
	return fact.Of(hereLeast, nil)
}

// cheapestNight says whether no other place in reach of the day asks less for a night.
func (b reader) cheapestNight(c *trip.Call, began float64) bool {
	var here *planner.Stop
	for i := range b.Around {
		if b.Around[i].ID == c.Stop {
			here = &b.Around[i]
		}
	}
	fee := here.Night.Fee / float64(here.Night.Nights)
	others := 0
	for _, s := range b.Around {
		km := b.Candidates[b.Calls[s.ID].Candidate].Km
		if s.Night == nil || km < began || s.Km-b.Axis.Driven(began) > b.Problem.Drive.MaxKmPerDay || b.Calls[s.ID].Place.ID == c.Place {
			continue
		}
		if others++; s.Night.Fee/float64(s.Night.Nights) < fee-planner.Tolerance {
			return false
		}
	}
	return others > 0
}

// scarce: there is no other offer for a long way, or to the end.
func (b reader) scarce(c *trip.Call, t trip.Task) fact.Fact {
	next := -1.0
	for _, s := range b.Around {
		km := b.Candidates[b.Calls[s.ID].Candidate].Km
		offers := slices.ContainsFunc(s.Serves, func(x planner.Service) bool { return x.Tank == t.Tank })
		if offers && km >= c.Km && b.Calls[s.ID].Place.ID != c.Place && (next < 0 || km < next) {
			next = km
		}
	}
	v := b.of(t.Tank)
	switch {
	case next < 0 && b.Axis.LengthKm-c.Km >= longWay:
		return fact.Of(hereLast, v)
	case next >= 0 && next-c.Km >= longWay:
		v["km"] = fact.Km(next-c.Km, 0)
		return fact.Of(hereNone, v)
	}
	return fact.Fact{}
}

// needed: without it the tank would be out, or full, before it is next served, or not
// come back as agreed.
func (b reader) needed(t trip.Task, later []*trip.Call, end trip.Levels) fact.Fact {
	k := b.tank(t.Tank)
	short := func(level float64, keep float64) bool {
		if k.Kind == planner.Waste {
			return k.Capacity-(level+t.Amount) < keep-planner.Tolerance
		}
		return level-t.Amount < keep-planner.Tolerance
	}
	kind := hereOut
	if k.Kind == planner.Waste {
		kind = hereFull
	}
	for _, x := range later {
		served := slices.ContainsFunc(x.Tasks, func(o trip.Task) bool { return o.Tank == t.Tank })
		if short(x.Arrive[t.Tank], k.Reserve) {
			v := b.of(t.Tank)
			v["date"] = b.Trip.Start.Plus(int(x.ArriveMin / 1440)).Says()
			return fact.Of(kind, v)
		}
		if served {
			return fact.Fact{}
		}
		if x.Night && short(x.Leave[t.Tank], k.Reserve) {
			v := b.of(t.Tank)
			v["date"] = b.Trip.Start.Plus(int(x.LeaveMin / 1440)).Says()
			return fact.Of(kind, v)
		}
	}
	if short(end[t.Tank], k.EndHeadroom()) {
		return fact.Of(hereAgreed, b.of(t.Tank))
	}
	return fact.Fact{}
}

// cheap: nowhere on the rest of the way does it cost less.
func (b reader) cheap(c *trip.Call, t trip.Task) fact.Fact {
	price, others := -1.0, 0
	for _, s := range b.Around {
		for _, x := range s.Serves {
			if s.ID == c.Stop && x.Tank == t.Tank {
				price = x.Price
			}
		}
	}
	if price <= 0 {
		return fact.Fact{}
	}
	dearer := false
	for _, s := range b.Around {
		km := b.Candidates[b.Calls[s.ID].Candidate].Km
		for _, x := range s.Serves {
			if x.Tank != t.Tank || km < c.Km || b.Calls[s.ID].Place.ID == c.Place {
				continue
			}
			if others++; x.Price < price-planner.Tolerance {
				return fact.Fact{}
			}
			dearer = dearer || x.Price > price+planner.Tolerance
		}
	}
	if others == 0 || !dearer {
		return fact.Fact{}
	}
	return fact.Of(hereCheap, b.of(t.Tank))
}

// of is a tank in a fact.
func (b reader) of(tank string) fact.V { return fact.V{"tank": b.called(tank)} }
