package life

import (
	"math"
	"slices"
	"testing"

	"ullage/planner/fact"
)

// Limits as the sources in roads.go give them; a heavy vehicle is slower, and
// planned to be no faster than any country of the table lets it.
func TestMassClasses(t *testing.T) {
	for _, c := range []struct{ kg, top float64 }{{2800, 95}, {3500, 95}, {3501, 80}, {4250, 80}, {7500, 80}} {
		if got := TopKmh(c.kg); got != c.top {
			t.Errorf("TopKmh(%v) = %v, want %v", c.kg, got, c.top)
		}
		if says := Heavier(c.kg); says.Nothing() != (c.kg <= 3500) {
			t.Errorf("%v kg: %+v", c.kg, says)
		}
	}
	want := fact.Of(HeavyRoads, fact.V{"allowed": fact.Kg(4250), "light": fact.Kg(3500), "top": fact.Quantity(80, "km/h", 0)})
	if got := Heavier(4250); !got.Equal(want) {
		t.Errorf("%+v, want %+v", got, want)
	}
	limits := HeavyLimits().List
	if len(limits) != len(heavy) {
		t.Fatalf("%d limits of %d countries", len(limits), len(heavy))
	}
	france := fact.Of("road.heavy_limit", fact.V{"country": fact.Text("FR"), "rural": fact.Quantity(80, "km/h", 0), "motorway": fact.Quantity(110, "km/h", 0)})
	if !slices.ContainsFunc(limits, func(l fact.Value) bool { return l.Fact.Equal(france) }) {
		t.Errorf("France is not among %+v", limits)
	}
	for _, l := range heavy {
		if l.motorway < heavyTopKmh || l.rural > l.motorway {
			t.Errorf("%+v, planned with %v", l, heavyTopKmh)
		}
	}
}

// UK Highway Code, rule 91: 15 minutes after every two hours.
func TestBreaks(t *testing.T) {
	for _, c := range []struct {
		min  float64
		want int
	}{{0, 0}, {-5, 0}, {math.NaN(), 0}, {120, 0}, {121, 1}, {240, 1}, {241, 2}, {600, 4}} {
		if got := Breaks(c.min); got != c.want {
			t.Errorf("Breaks(%v) = %v, want %v", c.min, got, c.want)
		}
	}
}
