package answer

import (
	"context"
	"math"
	"slices"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/reason"
	"ullage/planner/trip"
)

// This file finds out whether the map data hold no place for what a trip cannot
// do without: nothing about its tanks, days or nights would be news then.

// Kinds of what the map data lack; {do} is what cannot be done.
const (
	lackData fact.Kind = "lack.data" // nowhere in the data
	lackFar  fact.Kind = "lack.far"  // not {within} km of the route: the nearest is {name}, {km} off
	lackOut  fact.Kind = "lack.out"  // all that are near are out: {names}
	lackNear fact.Kind = "lack.near" // some are near, but not for this trip

	doNight  fact.Kind = "do.night"
	doPlugIn fact.Kind = "do.plug_in"

	cureOtherMap  fact.Kind = "cure.other_map"  // a place to {do} {from} {to} is enough
	cureOtherMaps fact.Kind = "cure.other_maps" // more than one is needed
	cureByHand    fact.Kind = "cure.by_hand"
)

// A lack is a need that no stop of the problem meets, and that was found to be missing.
type lack struct {
	need
	from, to float64 // on the planner's axis: a place there is enough; from > to: not known
}

// lacks are those without which there is no plan; whole says whether such places
// alone would give one.
func (b asker) lacks(ctx context.Context, trial reason.Trial) (out []lack, whole bool) {
	var needs []need
	for _, n := range b.needs() {
		if !n.met(b.Problem) {
			needs = append(needs, n)
		}
	}
	if len(needs) == 0 {
		return nil, false
	}
	spots := b.spots()
	whole = trial.Solves(b.with(needs, spots))
	switch {
	case whole:
		needs = b.needed(trial, needs, spots)
	case needs[0].tank == "" && trial.Solves(b.with(b.atSites(), spots)): // sites that have all would do
		return []lack{{need: needs[0], from: 1}}, true
	default:
		needs = slices.DeleteFunc(needs, func(n need) bool { return n.shortfall(b.Problem) == nil })
	}
	for _, n := range needs {
		l := lack{need: n, from: 1}
		if whole && !trip.KindOfTank(n.tank).ByNight {
			l.from, l.to = b.enough(trial, n, needs, spots)
		}
		out = append(out, l)
	}
	return out, whole && len(out) > 0 && ctx.Err() == nil
}

// needs are all that a trip can have.
func (b asker) needs() []need {
	out := []need{{}}
	for _, t := range b.Problem.Tanks {
		out = append(out, need{t.ID})
	}
	return out
}

// atSites are the needs that a site for the night can meet.
func (b asker) atSites() []need {
	return slices.DeleteFunc(b.needs(), func(n need) bool { return n.tank != "" && !trip.KindOfTank(n.tank).AtSites })
}

// needed are those of the needs that are missed.
func (b asker) needed(trial reason.Trial, needs []need, spots []float64) []need {
	for i := len(needs) - 1; i >= 0; i-- {
		if rest := slices.Delete(slices.Clone(needs), i, i+1); trial.Solves(b.with(rest, spots)) {
			needs = rest
		}
	}
	return needs
}

// shortfall is a limit of a need that no plan can keep; nil: none is known.
func (n need) shortfall(p *planner.Problem) *planner.Reason {
	for _, r := range planner.Shortfall(p) {
		if r.Limit == n.tank || n.tank == "" && slices.Contains([]fact.Kind{planner.ReasonDayKm, planner.ReasonDayMin, planner.ReasonNightsLess}, r.Kind) {
			return &r
		}
	}
	return nil
}

// enough is the longest stretch of the positions on which one place is enough,
// where the other needs are met.
func (b asker) enough(trial reason.Trial, n need, needs []need, spots []float64) (from, to float64) {
	rest := b.with(slices.DeleteFunc(slices.Clone(needs), func(o need) bool { return o == n }), spots)
	from, to = 1, 0
	begun := math.NaN()
	for _, km := range spots {
		one := b.onto(rest, n, km)
		if !trial.Solves(one) {
			begun = math.NaN()
			continue
		}
		if math.IsNaN(begun) {
			begun = km
		}
		if from > to || km-begun > to-from {
			from, to = begun, km
		}
	}
	return from, to
}

// does is what a need is for, as a clause: empty the toilet cassette.
func (b asker) does(n need) fact.Value {
	if n.tank == "" {
		return fact.Clause(fact.Of(doNight, nil))
	}
	if trip.KindOfTank(n.tank).ByNight {
		return fact.Clause(fact.Of(doPlugIn, nil))
	}
	return trip.KindOfTank(n.tank).Verb.Does(b.Trip.Vehicle.Called(n.tank), fact.Value{})
}

// reasonOf says what the data lack, and what would help.
func (b asker) reasonOf(l lack) trip.Reason {
	r := trip.Reason{Cause: trip.CauseData, Reason: planner.Reason{Kind: lackData, Limit: l.tank, ToKm: b.Axis.LengthKm}}
	if l.tank == "" {
		r.Limit = limitNight
	}
	if plain := l.shortfall(b.Problem); plain != nil {
		r.FromKm, r.ToKm, r.Missing = b.Axis.Route(plain.FromKm), b.Axis.Route(plain.ToKm), plain.Missing
	}
	r.Says = b.where(l.need)
	if r.Kind = r.Says.Kind; r.Kind == lackNear {
		r.Cause = trip.CauseWish
	}
	return r
}

// otherPlaces are the cures of places that the map data do not have.
func (b asker) otherPlaces(lacks []lack) []fact.Fact {
	if len(lacks) == 0 {
		return nil
	}
	v := fact.V{"do": fact.Each(lacks, func(l lack) fact.Value { return b.does(l.need) })}
	others := fact.Of(cureOtherMaps, v)
	if l := lacks[0]; len(lacks) == 1 && l.from <= l.to {
		others = fact.Of(cureOtherMap, fact.V{"do": v["do"], "from": fact.Mark(b.Axis.Route(l.from), 0), "to": fact.Mark(b.Axis.Route(l.to), 0)})
	}
	return []fact.Fact{others, fact.Of(cureByHand, v)}
}

// limitNight is the limit of a refusal for want of any place for the night.
const limitNight = "night"

// where says how far the nearest place is that meets a need, and why it is of no use.
func (b asker) where(n need) fact.Fact {
	v := fact.V{"do": b.does(n)}
	var out, near []fact.Value
	var nearest *trip.Place
	least := math.Inf(1)
	offKm := b.OffKm()
	for i := range b.Places {
		p := &b.Places[i]
		if !n.offered(p) {
			continue
		}
		off := offKm(p.Point)
		if off <= b.Trip.CorridorKm {
			if why := b.excluded(p.ID); why != nil {
				out = append(out, fact.Clause(fact.Of(lackPlace, fact.V{"name": p.Called(), "why": fact.Clause(*why)})))
			}
			near = append(near, p.Called())
		}
		if nearest == nil || off < least {
			nearest, least = p, off
		}
	}
	switch {
	case nearest == nil:
		return fact.Of(lackData, v)
	case len(out) > 0 && len(out) == len(near):
		v["names"] = fact.List(out[:min(len(out), mostNamed)]...)
		return fact.Of(lackOut, v)
	case len(near) > 0:
		v["names"] = fact.List(near[:min(len(near), mostNamed)]...)
		return fact.Of(lackNear, v)
	}
	v["within"], v["name"], v["km"] = fact.Km(b.Trip.CorridorKm, -1), nearest.Called(), fact.Value{}
	if !math.IsInf(least, 1) {
		v["km"] = fact.Km(least, 0)
	}
	return fact.Of(lackFar, v)
}

// lackPlace is one place that is out, {name}, and {why}.
const lackPlace fact.Kind = "lack.place"

// mostNamed is how many places are named at most.
const mostNamed = 3

// offered says whether the data say that a place meets a need.
func (n need) offered(p *trip.Place) bool {
	if n.tank == "" {
		return p.Stay != nil
	}
	if trip.KindOfTank(n.tank).ByNight {
		return p.Stay != nil && p.Stay.HookUp == trip.Yes
	}
	o, _ := p.Offer(n.tank)
	return o.Answer == trip.Yes || o.Answer == trip.Unknown && o.Likely
}

// excluded is why a place near the route is out; nil: it is not.
func (b asker) excluded(id string) *fact.Fact {
	for _, c := range b.Candidates {
		if c.Place == id && c.Excluded != nil {
			return c.Excluded
		}
	}
	return nil
}
