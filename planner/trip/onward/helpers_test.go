package onward

import (
	"context"
	"encoding/json"
	"testing"
	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/trip"
	"ullage/planner/trip/answer"
	"ullage/planner/trip/build"
	"ullage/planner/trip/read"
	"ullage/planner/trip/triptest/built"
)

// living is [built.Living] and its plan.
func living(t *testing.T) (*build.Built, trip.Itinerary) {
	t.Helper()
	b := built.Living(t)
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
	plan := built.Replayed(t, b, visits)
	return read.Itinerary(b, plan, backup.Closures(b.Whole(), plan))
}
