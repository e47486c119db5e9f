package answer

import (
	"context"
	"fmt"
	"slices"

	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/fact"
	"ullage/planner/solve"
	"ullage/planner/trip"
)

// mostOthers is how many other plans are shown.
const mostOthers = 2

// Kinds of what is different in another plan.
const (
	otherInstead fact.Kind = "other.night_instead"
	otherNight   fact.Kind = "other.night_more"
	otherNoNight fact.Kind = "other.night_less"
	otherStops   fact.Kind = "other.stops"
)

// others are plans that one may like better.
func (b asker) others(ctx context.Context, plan planner.Plan) ([]trip.Other, error) {
	found, err := backup.Alternatives(ctx, b.Problem, plan, mostOthers, solve.Options{MaxLabels: manyLabels})
	if err != nil {
		return nil, fmt.Errorf("other plans for %q: %w", b.Trip.Name, err)
	}
	var out []trip.Other
	for _, a := range found {
		o := trip.Other{Extra: a.Extra, Says: b.difference(plan, a.Plan), Days: b.lines(a.Plan.Visits)}
		if a.Without != "" {
			o.Avoid = b.Calls[a.Without].Place.ID
		}
		out = append(out, o)
	}
	return out, nil
}

// difference is what a person sees: other nights, more or fewer stops.
func (b asker) difference(plan, other planner.Plan) []fact.Fact {
	var out []fact.Fact
	was, is := b.nights(plan), b.nights(other)
	gone, fresh := without(was, is), without(is, was)
	v := fact.V{"names": b.named(fresh), "gone": b.named(gone)}
	switch {
	case len(fresh) > 0 && len(gone) > 0:
		out = append(out, fact.Of(otherInstead, v))
	case len(fresh) > 0:
		out = append(out, fact.Of(otherNight, fact.V{"names": v["names"]}))
	case len(gone) > 0:
		out = append(out, fact.Of(otherNoNight, fact.V{"names": v["gone"]}))
	}
	if m, n := len(plan.Visits), len(other.Visits); m != n {
		out = append(out, fact.Of(otherStops, fact.V{"n": fact.Count(n), "was": fact.Count(m)}))
	}
	return out
}

// nights are the places of the nights.
func (b asker) nights(plan planner.Plan) []*trip.Place {
	var out []*trip.Place
	for _, v := range plan.Visits {
		if v.Night {
			out = append(out, b.Calls[v.Stop].Place)
		}
	}
	return out
}

func (b asker) named(places []*trip.Place) fact.Value {
	return fact.Each(places, (*trip.Place).Called)
}

// without are the places of a that b does not have, by what they are called.
func without(a, b []*trip.Place) []*trip.Place {
	called := func(p *trip.Place) string { return (fact.Fact{Values: fact.V{"name": p.Called()}}).Key() }
	return slices.DeleteFunc(slices.Clone(a), func(p *trip.Place) bool {
		return slices.ContainsFunc(b, func(q *trip.Place) bool { return called(p) == called(q) })
	})
}
