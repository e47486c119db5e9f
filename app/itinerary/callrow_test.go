package itinerary

import (
	"strings"
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/trip"
)

// In a stay an act says when it is done: on arrival that goes without saying.
func TestWhenInAStay(t *testing.T) {
	stay := trip.Call{Night: true, Nights: 3}
	for night, want := range map[int]string{0: "fill", 1: "After one night: fill", 2: "After 2 nights: fill", 3: "Before you leave: fill"} {
		if got := show.When(say.Voice{}, stay, trip.Task{Night: night}, "fill"); got != want {
			t.Errorf("after %d nights: %q, want %q", night, got, want)
		}
	}
	if got := show.When(say.Voice{}, trip.Call{}, trip.Task{}, "fill"); got != "fill" {
		t.Errorf("by day: %q", got)
	}
}

// A number is dialled without what parts it, and a call without a contact has no line.
func TestContactLinks(t *testing.T) {
	c := trip.Call{Contact: trip.Contact{Phone: "+376 (738) 477", Website: "https://site.example"}}
	html := app.HTMLString(app.Div().Body((&CallRow{Call: c}).contact()))
	for _, want := range []string{`href="tel:+376738477"`, `href="https://site.example"`, ">site.example<"} {
		if !strings.Contains(html, want) {
			t.Errorf("no %s in %s", want, html)
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
