package itinerary

import (
	"testing"

	"ullage/app/say"
	"ullage/planner/trip"
)

// More than a tankful can be filled over a night: the levels alone would lie.
func TestWhatAStayUses(t *testing.T) {
	night := trip.Call{Night: true}
	fresh := trip.Strip{Tank: "fresh", Unit: "L", Capacity: 100}
	for _, c := range []struct {
		call trip.Call
		task trip.Task
		want string
	}{
		{night, trip.Task{Amount: 130, Unit: "L", Before: 35, After: 100}, "65\u202fL for tonight, 65\u202fL to top up"},
		{night, trip.Task{Amount: 102, Unit: "L", Before: 51, After: 0}, "51\u202fL for tonight, 51\u202fL to top up"},
		{night, trip.Task{Amount: 66, Unit: "L", Before: 35, After: 100}, ""},
		{trip.Call{}, trip.Task{Amount: 65, Unit: "L", Before: 35, After: 100}, ""},
	} {
		if got := (&CallRow{Say: say.Voice{Thin: true}, Call: c.call}).stayed(fresh, c.task); got != c.want {
			t.Errorf("%+v: %q, want %q", c.task, got, c.want)
		}
	}
}
