package answer

import (
	"context"
	"testing"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
)

func mustBuild(t *testing.T, tr trip.Trip, places []trip.Place, opt build.Options) *build.Built {
	t.Helper()
	b, err := build.Trip(tr, places, opt)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// living is island in a vehicle that lives, with a station near the end.
func living(t *testing.T) (*build.Built, trip.Itinerary) {
	t.Helper()
	tr, places := triptest.Island()
	tr.Vehicle = trip.Fleet()[0]
	tr.Party.Showers, tr.KeysByMin = "sites", 16*60
	last := triptest.At("n5", "fuel", 295, 1, triptest.Yes("diesel"))
	b := mustBuild(t, tr, append(places, last), build.Options{})
	it, err := Plan(context.Background(), b, Options{})
	if err != nil || len(it.Days) == 0 {
		t.Fatalf("%s, %v, %v", it.Status, it.Why, err)
	}
	return b, it
}

// nightAt is what one night at a place takes from a tank, to plan with.
func nightAt(t *testing.T, tr trip.Trip, s trip.Stay, change func(*trip.Place)) map[string]float64 {
	t.Helper()
	p := triptest.At("a", "campsite", 50, 0)
	p.Point[1] += 47
	p.Point[0] = 0.5
	p.Stay = &s
	if change != nil {
		change(&p)
	}
	return triptest.StopOf(t, mustBuild(t, tr, []trip.Place{p}, build.Options{}).Problem, "a").Night.Use
}

func mustPlan(t *testing.T, tr trip.Trip, places []trip.Place) trip.Itinerary {
	t.Helper()
	it, err := Trip(t.Context(), tr, places, Options{})
	if err != nil {
		t.Fatal(err)
	}
	return it
}
