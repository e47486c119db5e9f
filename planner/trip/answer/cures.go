package answer

import (
	"context"
	"fmt"

	"ullage/planner/life"
	"ullage/planner/solve"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
)

// A remedy changes a trip in a way that the planner, which knows numbers only,
// cannot think of; ok is false where there is nothing to change.
type remedy struct {
	text  string
	apply func(*trip.Trip) bool
}

// set is a remedy that gives a choice its value.
func set[T comparable](text string, value T, of func(*trip.Trip) *T) remedy {
	return remedy{text, func(t *trip.Trip) bool {
		at := of(t)
		changes := *at != value
		*at = value
		return changes
	}}
}

var remedies = []remedy{
	{"look twice as far beside the route", func(t *trip.Trip) bool {
		was := t.CorridorKm
		t.CorridorKm = min(2*was, trip.MostCorridorKm)
		return t.CorridorKm > was
	}},
	set("take showers at the sites", "sites", func(t *trip.Trip) *string { return &t.Party.Showers }),
	set("wash at the basin", "frugal", func(t *trip.Trip) *string { return &t.Party.Showers }),
	set("use the toilets of the sites by day", "sites", func(t *trip.Trip) *string { return &t.Party.Toilet }),
	set("cook little", "little", func(t *trip.Trip) *string { return &t.Party.Cooking }),
	{"keep it cooler, 18 °C by day and 12 °C at night", cooler},
	set("keep the hot water at 40 °C, and heat it up before a shower", life.HotEnough, func(t *trip.Trip) *float64 { return &t.Comfort.HotC }),
	{"plan for 75 of 100 such trips only, and watch the gauges", lessCare},
	set("allow campsites", true, func(t *trip.Trip) *bool { return &t.Stays.Campsites }),
	set("allow plain places for motorhomes", true, func(t *trip.Trip) *bool { return &t.Stays.Stopovers }),
	set("allow nights without hook-up", false, func(t *trip.Trip) *bool { return &t.Stays.HookUp }),
	set("spend the nights on hook-up", true, func(t *trip.Trip) *bool { return &t.Stays.HookUp }),
}

// cooler wishes less warmth, where more is wished and the vehicle knows what that means.
func cooler(t *trip.Trip) bool {
	if t.Vehicle.Life == nil || t.Comfort.InsideC != 0 && t.Comfort.InsideC <= 18 {
		return false
	}
	t.Comfort.InsideC, t.Comfort.NightC = 18, 12
	return true
}

// lessCare plans with less than the usual care; nobody is told to count on luck.
func lessCare(t *trip.Trip) bool {
	if t.Vehicle.Life == nil || t.Confident() <= 0.75 {
		return false
	}
	t.Confidence = 0.75
	return true
}

// tripCures are remedies that were tried and alone give the trip a plan.
func (b asker) tripCures(ctx context.Context) []string {
	var out []string
	for _, r := range remedies {
		t := b.Trip
		if !r.apply(&t) || ctx.Err() != nil {
			continue
		}
		tried, err := build.Trip(t, b.Places, build.Options{Hours: b.Hours, Roads: b.Roads})
		if err != nil {
			continue
		}
		plan, err := solve.Solve(ctx, tried.Problem, solve.Options{MaxLabels: fewLabels})
		if err == nil && plan.End != nil {
			out = append(out, fmt.Sprintf("%s: the trip then costs %.2f %s", r.text, plan.Cost, b.Trip.Currency))
		}
	}
	return out
}
