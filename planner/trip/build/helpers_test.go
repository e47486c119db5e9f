package build

import (
	"testing"
	"ullage/planner/trip"
	"ullage/planner/trip/triptest"
)

func mustBuild(t *testing.T, tr trip.Trip, places []trip.Place, opt Options) *Built {
	t.Helper()
	b, err := Trip(tr, places, opt)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// nightAt is what one night at a place takes from a tank, to plan with.
func nightAt(t *testing.T, tr trip.Trip, s trip.Stay, change func(*trip.Place)) map[string]float64 {
	t.Helper()
	p := triptest.AlpineSite("a", s)
	if change != nil {
		change(&p)
	}
	return triptest.StopOf(t, mustBuild(t, tr, []trip.Place{p}, Options{}).Problem, "a").Night.Use
}
