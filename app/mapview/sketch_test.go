package mapview

import (
	"slices"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/browser"
	"ullage/planner/byroad"
)

// A hundred pixels are a degree, north is up.
func flatMap(lng, lat float64) (x, y float64) { return 100 * lng, 100 * (10 - lat) }

// Points within a pixel are left out, both ends never; what is off the roads has a look of its own.
func TestSketch(t *testing.T) {
	legs := []byroad.Leg{
		{Line: orb.LineString{{1, 1}, {1.004, 1}, {1.5, 1.25}, {2, 1}, {2.001, 1}}},
		{Line: orb.LineString{{2, 1}, {3, 2}}, Drawn: true},
	}
	before := []byroad.Leg{{Line: orb.LineString{{1, 1}, {3, 2}}}}
	const road, off = "M100.0 900.0L150.0 875.0L200.0 900.0L200.1 900.0", "M200.0 900.0L300.0 800.0"
	want := []browser.Shape{
		{Class: "before", Path: "M100.0 900.0L300.0 800.0"}, {Class: "casing", Path: road}, {Class: "casing", Path: off}, {Class: "leg", Path: road}, {Class: "leg off", Path: off},
		{Class: "held", Path: "M192.0 900.0a8 8 0 1 0 16 0a8 8 0 1 0-16 0"},
	}
	if got := sketch(orb.Point{2, 1}, before, legs, flatMap); !slices.Equal(got, want) {
		t.Errorf("sketch %q, want %q", got, want)
	}
}
