package answer

import (
	"context"

	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/solve"
	"ullage/planner/trip"
)

// Kinds of what would give a trip a plan.
const (
	cureThen          fact.Kind = "cure.then" // and what it then costs
	cureCorridor      fact.Kind = "cure.corridor"
	cureShowersSite   fact.Kind = "cure.showers_site"
	cureShowersFrugal fact.Kind = "cure.showers_frugal"
	cureToiletsSite   fact.Kind = "cure.toilets_site"
	cureCookLittle    fact.Kind = "cure.cook_little"
	cureCooler        fact.Kind = "cure.cooler"
	cureTepid         fact.Kind = "cure.tepid"
	cureLessCare      fact.Kind = "cure.less_care"
	cureCampsites     fact.Kind = "cure.campsites"
	cureStopovers     fact.Kind = "cure.stopovers"
	cureNoHookup      fact.Kind = "cure.no_hookup"
	cureHookup        fact.Kind = "cure.hookup"
)

// A remedy changes a trip in a way that the planner, which knows numbers only,
// cannot think of; ok is false where there is nothing to change.
type remedy struct {
	says  fact.Fact
	apply func(*trip.Trip) bool
}

// set is a remedy that gives a choice its value.
func set[T comparable](kind fact.Kind, value T, of func(*trip.Trip) *T) remedy {
	return remedy{fact.Of(kind, nil), func(t *trip.Trip) bool {
		at := of(t)
		changes := *at != value
		*at = value
		return changes
	}}
}

var remedies = []remedy{
	{fact.Of(cureCorridor, nil), func(t *trip.Trip) bool {
		was := t.CorridorKm
		t.CorridorKm = min(2*was, trip.MostCorridorKm)
		return t.CorridorKm > was
	}},
	set(cureShowersSite, trip.ShowerSites, func(t *trip.Trip) *trip.Showers { return &t.Party.Showers }),
	set(cureShowersFrugal, trip.ShowerFrugal, func(t *trip.Trip) *trip.Showers { return &t.Party.Showers }),
	set(cureToiletsSite, trip.ToiletSites, func(t *trip.Trip) *trip.Toilet { return &t.Party.Toilet }),
	set(cureCookLittle, trip.CookLittle, func(t *trip.Trip) *trip.Cooking { return &t.Party.Cooking }),
	{fact.Of(cureCooler, fact.V{"kept": fact.Celsius(coolC), "cold": fact.Celsius(coolNightC)}), cooler},
	{fact.Of(cureTepid, fact.V{"kept": fact.Celsius(life.HotEnough)}), tepid},
	{fact.Of(cureLessCare, fact.V{"trips": fact.Count(100 * lessConfidence)}), lessCare},
	set(cureCampsites, true, func(t *trip.Trip) *bool { return &t.Stays.Campsites }),
	set(cureStopovers, true, func(t *trip.Trip) *bool { return &t.Stays.Stopovers }),
	set(cureNoHookup, false, func(t *trip.Trip) *bool { return &t.Stays.HookUp }),
	set(cureHookup, true, func(t *trip.Trip) *bool { return &t.Stays.HookUp }),
}

// tepid keeps the water no warmer than is enough for dishes and hands.
func tepid(t *trip.Trip) bool {
	changes := t.Comfort.HotC != life.HotEnough
	t.Comfort.HotC = life.HotEnough
	return changes
}

const (
	coolC, coolNightC = 18, 12
	lessConfidence    = 0.75
)

// cooler wishes less warmth, where more is wished and the vehicle knows what that means.
func cooler(t *trip.Trip) bool {
	if t.Vehicle.Life == nil || t.Comfort.InsideC != 0 && t.Comfort.InsideC <= coolC {
		return false
	}
	t.Comfort.InsideC, t.Comfort.NightC = coolC, coolNightC
	return true
}

// lessCare plans with less than the usual care; nobody is told to count on luck.
func lessCare(t *trip.Trip) bool {
	if t.Vehicle.Life == nil || t.Confident() <= lessConfidence {
		return false
	}
	t.Confidence = lessConfidence
	return true
}

// tripCures are remedies that were tried and alone give the trip a plan.
func (b asker) tripCures(ctx context.Context) []fact.Fact {
	var out []fact.Fact
	for _, r := range remedies {
		t := b.Trip
		if !r.apply(&t) || ctx.Err() != nil {
			continue
		}
		tried, err := b.again(t)
		if err != nil {
			continue
		}
		plan, err := solve.Solve(ctx, tried.Problem, solve.Options{MaxLabels: fewLabels})
		if err == nil && plan.End != nil {
			out = append(out, fact.Of(cureThen, fact.V{"what": fact.Clause(r.says), "sum": fact.Money(plan.Cost, b.Trip.Currency)}))
		}
	}
	return out
}
