package onward

import (
	"context"
	"encoding/json"
	"testing"
	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/replay"
	"ullage/planner/trip"
	"ullage/planner/trip/answer"
	"ullage/planner/trip/build"
	"ullage/planner/trip/read"
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
	it, err := answer.Plan(context.Background(), b, answer.Options{})
	if err != nil || len(it.Days) == 0 {
		t.Fatalf("%s, %v, %v", it.Status, it.Why, err)
	}
	return b, it
}

// afterTheNight is the living trip on the second morning, and its plan.
func afterTheNight(t *testing.T) (trip.Trip, []trip.Place, trip.Itinerary, Now) {
	t.Helper()
	b, it := living(t)
	return b.Trip, b.Places, it, Now{Km: new(200.0), Time: "2026-06-13T11:00"}
}

func mustOnward(t *testing.T, tr trip.Trip, it trip.Itinerary, now Now) Rest {
	t.Helper()
	// The page has the itinerary as JSON.
	b, err := json.Marshal(it)
	if err != nil {
		t.Fatal(err)
	}
	var read trip.Itinerary
	if err := json.Unmarshal(b, &read); err != nil {
		t.Fatal(err)
	}
	o, err := From(tr, read, now)
	if err != nil {
		t.Fatal(err)
	}
	return o
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
	it := read.Itinerary(b, plan, backup.Closures(b.Whole(), plan))
	return it
}
