package read

import (
	"testing"
	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest/built"
)

// driven replays visits of a built trip and reads them back.
func driven(t *testing.T, b *build.Built, visits ...planner.Visit) trip.Itinerary {
	t.Helper()
	plan := built.Replayed(t, b, visits)
	return Itinerary(b, plan, backup.Closures(b.Whole(), plan))
}
