package answer

import (
	"context"
	"testing"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest/built"
)

// living is [built.Living] and its plan.
func living(t *testing.T) (*build.Built, trip.Itinerary) {
	t.Helper()
	b := built.Living(t)
	it, err := Plan(context.Background(), b, Options{})
	if err != nil || len(it.Days) == 0 {
		t.Fatalf("%s, %v, %v", it.Status, it.Why, err)
	}
	return b, it
}

func mustPlan(t *testing.T, tr trip.Trip, places []trip.Place) trip.Itinerary {
	t.Helper()
	it, err := Trip(t.Context(), tr, places, Options{})
	if err != nil {
		t.Fatal(err)
	}
	return it
}
