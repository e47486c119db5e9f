package read

import (
	"testing"
	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/replay"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
)

func mustBuild(t *testing.T, tr trip.Trip, places []trip.Place, opt build.Options) *build.Built {
	t.Helper()
	b, err := build.Trip(tr, places, opt)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// driven replays visits of a built trip and reads them back.
func driven(t *testing.T, b *build.Built, visits ...planner.Visit) trip.Itinerary {
	t.Helper()
	visits, err := replay.WasteAmounts(b.Problem, visits)
	if err != nil {
		t.Fatal(err)
	}
	plan, err := replay.Plan(b.Problem, visits)
	if err != nil {
		t.Fatal(err)
	}
	it := Itinerary(b, plan, backup.Closures(b.Whole(), plan))
	return it
}
