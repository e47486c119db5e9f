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

// No distance is said to be 0, in miles neither.
func TestDetour(t *testing.T) {
	for _, c := range []struct {
		call          trip.Call
		metric, miles string
	}{
		{trip.Call{DetourKm: 0.06, DetourMin: 0.1, ByRoad: true}, "on the route", "on the route"},
		{trip.Call{DetourKm: 0.15, DetourMin: 0.3, ByRoad: true}, "on the route", "on the route"},
		{trip.Call{DetourKm: 0.15, DetourMin: 1, ByRoad: true}, "detour 0.1 km, 1 min", "detour 0.1 mi, 1 min"},
		{trip.Call{DetourKm: 0.4, DetourMin: 0.4, ByRoad: true}, "0.2 km off your route", "0.1 mi off your route"},
		{trip.Call{DetourKm: 0.07}, "on the route", "on the route"},
		{trip.Call{DetourKm: 4, DetourMin: 6}, "detour about 4 km, 6 min (estimate)", "detour about 2.5 mi, 6 min (estimate)"},
	} {
		for units, want := range map[string]string{"metric": c.metric, "british": c.miles} {
			if got := (&CallRow{Say: say.Voice{Units: units}, Call: c.call}).detour(); got != want {
				t.Errorf("%+v: %q, want %q", c.call, got, want)
			}
		}
	}
}
