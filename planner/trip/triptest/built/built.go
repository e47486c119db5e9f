// Package built has built trips for tests of what comes after building. It stands
// apart from triptest, whose trips the tests of building use.
package built

import (
	"testing"

	"ullage/planner"
	"ullage/planner/replay"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
)

// Trip builds a trip; the test ends where it cannot be built.
func Trip(t testing.TB, tr trip.Trip, places []trip.Place, opt build.Options) *build.Built {
	t.Helper()
	b, err := build.Trip(tr, places, opt)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Living is the island in a vehicle that lives, with a station near the end.
func Living(t testing.TB) *build.Built {
	t.Helper()
	tr, places := triptest.Island()
	tr.Vehicle = trip.Fleet()[0]
	tr.Party.Showers, tr.KeysByMin = "sites", 16*60
	last := triptest.At("n5", "fuel", 295, 1, triptest.Yes("diesel"))
	return Trip(t, tr, append(places, last), build.Options{})
}

// Replayed is the plan of visits to the stops of a built trip.
func Replayed(t testing.TB, b *build.Built, visits []planner.Visit) planner.Plan {
	t.Helper()
	visits, err := replay.WasteAmounts(b.Problem, visits)
	if err != nil {
		t.Fatal(err)
	}
	plan, err := replay.Plan(b.Problem, visits)
	if err != nil {
		t.Fatal(err)
	}
	return plan
}
