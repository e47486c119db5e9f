package read

import (
	"testing"
	"ullage/planner"
	"ullage/planner/life/advice"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
	"ullage/planner/trip/triptest/built"

	"github.com/paulmach/orb"
)

// What the vehicle does not have is not asked for.
func TestConditions(t *testing.T) {
	for i, c := range []struct {
		vehicle int
		has     map[string]bool
	}{
		{0, map[string]bool{advice.HasGas: true, advice.HasAbsorption: true, advice.HasDEF: true, advice.HasLithium: false}},
		{1, map[string]bool{advice.HasGas: false, advice.HasAbsorption: false, advice.HasLithium: true}},
		{2, map[string]bool{advice.HasDEF: false, advice.HasGas: true}},
	} {
		holds := reader{built.Trip(t, triptest.Lived(c.vehicle, "2027-07-15"), nil, build.Options{})}.conditions(moment{})
		for what, want := range c.has {
			if holds(what) != want {
				t.Errorf("%d: %s is %v", i, what, !want)
			}
		}
	}
}

// In frost a tap by the road is said to be often shut off; in summer it is not.
func TestFrostAtServices(t *testing.T) {
	for start, want := range map[trip.Date]bool{"2027-01-15": true, "2027-07-15": false} {
		tr := triptest.Lived(0, start)
		tap := triptest.At("tap", "water", 0, 0, triptest.Yes("fresh"))
		tap.Point, tap.EleM = orb.Point{0.5, 47}, new(1200.0)
		tr.Levels = map[string]float64{"fresh": 20}
		b := built.Trip(t, tr, []trip.Place{tap}, build.Options{})
		it := driven(t, b, planner.Visit{Stop: "tap", Serve: []planner.Serve{{Tank: "fresh", Amount: 30}}})
		if got := triptest.Has(it.Days[0].Calls[0].Cautions, "howto.fresh.caution.shut_off"); got != want {
			t.Errorf("%s: frost said %v, want %v", start, got, want)
		}
	}
}
