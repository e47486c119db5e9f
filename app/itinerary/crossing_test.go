package itinerary

import (
	"testing"

	"ullage/app/say"
	"ullage/planner/trip"
)

// Ferries stand among the stops by their time.
func TestFerriesOfADay(t *testing.T) {
	day := trip.Day{Number: 2, Calls: []trip.Call{{ArriveMin: 100}, {ArriveMin: 300}}, Ferries: []trip.Crossing{
		{StartMin: 50}, {StartMin: 100}, {StartMin: 200}, {StartMin: 400},
	}}
	for i, want := range []int{1, 2, 1} {
		if got := len(crossings(say.Voice{}, day, i)); got != want {
			t.Errorf("before stop %d: %d ferries, want %d", i, got, want)
		}
	}
}
