package build

import (
	"testing"

	"ullage/planner"
	"ullage/planner/trip"
	"ullage/planner/trip/triptest"
)

// station is a stop that serves diesel and fresh water, km along.
func station(id string, km float64) planner.Stop {
	return planner.Stop{ID: id, Km: km, Fee: 1, DetourKm: 1, DetourMin: 1, StopMin: 1, Open: [][2]float64{{480, 1200}},
		Serves: []planner.Service{{Tank: "diesel", Price: 1.5, Fee: 1, Min: 6, Spare: 10}, {Tank: "fresh", Min: 10}}}
}

// A stop that is as good in all is enough; one thing in which it is worse, and the
// other stays.
func TestReplaces(t *testing.T) {
	for name, c := range map[string]struct {
		change func(a, b *planner.Stop)
		want   bool
	}{
		"equal":               {func(a, b *planner.Stop) {}, true},
		"always open":         {func(a, b *planner.Stop) { a.Open = nil }, true},
		"serves more":         {func(a, b *planner.Stop) { b.Serves = b.Serves[:1] }, true},
		"a little more spare": {func(a, b *planner.Stop) { a.Serves[0].Spare += 1 }, true},
		"a required":          {func(a, b *planner.Stop) { a.Required = true }, true},
		"b required":          {func(a, b *planner.Stop) { b.Required = true }, false},
		"night at a":          {func(a, b *planner.Stop) { a.Night = &planner.Night{} }, false},
		"night at b":          {func(a, b *planner.Stop) { b.Night = &planner.Night{} }, false},
		"dearer to call at":   {func(a, b *planner.Stop) { a.Fee += 0.1 }, false},
		"farther off":         {func(a, b *planner.Stop) { a.DetourKm += 0.1 }, false},
		"longer off":          {func(a, b *planner.Stop) { a.DetourMin += 0.1 }, false},
		"slower":              {func(a, b *planner.Stop) { a.StopMin += 0.1 }, false},
		"other hours":         {func(a, b *planner.Stop) { a.Open = [][2]float64{{480, 1260}} }, false},
		"b always open":       {func(a, b *planner.Stop) { b.Open = nil }, false},
		"serves less":         {func(a, b *planner.Stop) { a.Serves = a.Serves[:1] }, false},
		"dearer":              {func(a, b *planner.Stop) { a.Serves[0].Price += 0.1 }, false},
		"a fee more":          {func(a, b *planner.Stop) { a.Serves[0].Fee += 0.1 }, false},
		"a minute more":       {func(a, b *planner.Stop) { a.Serves[0].Min += 1 }, false},
		"much more spare":     {func(a, b *planner.Stop) { a.Serves[0].Spare += 1.1 }, false},
		"for guests":          {func(a, b *planner.Stop) { a.Serves[0].GuestsOnly = true }, false},
		"b for guests":        {func(a, b *planner.Stop) { b.Serves[0].GuestsOnly = true }, false},
	} {
		a, b := station("a", 10), station("b", 10)
		c.change(&a, &b)
		if got := replaces(a, b); got != c.want {
			t.Errorf("%s: replaces %v, want %v", name, got, c.want)
		}
	}
}

// Of equals a kilometre apart the nearest to the road stays, the first where they are
// as near; a ferry between two makes no neighbours of them.
func TestThin(t *testing.T) {
	near := func(s planner.Stop, detourKm float64) planner.Stop { s.DetourKm = detourKm; return s }
	land := trip.NewAxis(100, nil)
	for _, c := range []struct {
		name  string
		axis  trip.Axis
		stops []planner.Stop
		want  string
	}{
		{"the first of equals", land, []planner.Stop{station("a", 10), station("b", 10.9)}, "a"},
		{"beyond a kilometre", land, []planner.Stop{station("a", 10), station("b", 11.1)}, "a b"},
		{"the nearest", land, []planner.Stop{station("a", 10), near(station("b", 10.9), 0.5), station("c", 11.8)}, "b"},
		{"one left out leaves out no other", land, []planner.Stop{near(station("a", 10), 0.5), station("b", 10.9), station("c", 11.8)}, "a c"},
		{"a ferry between", trip.NewAxis(100, []trip.Crossing{{Ferry: trip.Ferry{FromKm: 10, ToKm: 30, Min: 20}}}), []planner.Stop{station("a", 10), station("b", 10.5)}, "a b"},
	} {
		if got := triptest.StopIDs(&planner.Problem{Stops: thin(c.stops, nil, c.axis)}); got != c.want {
			t.Errorf("%s: %q stay, want %q", c.name, got, c.want)
		}
	}
}
