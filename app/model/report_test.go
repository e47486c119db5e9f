package model

import (
	"strings"
	"testing"
)

// The kind of a gauge is remembered for a tank of a vehicle; its reading is not.
func TestGaugesAreRemembered(t *testing.T) {
	m := then(underWay(), ReportToggled{})
	for _, e := range []Edited{{RoadKind + "diesel", "quarters"}, {RoadValue + "diesel", "2"}, {RoadKind + "grey", "lamp"}, {RoadKind + "grey", ""}} {
		if kind := strings.HasPrefix(e.Field, RoadKind); len(todo[SaveMarks](m, e)) > 0 != kind {
			t.Errorf("%+v is to be kept: %v, want %v", e, !kind, kind)
		}
		m = then(m, e)
	}
	again := then(underWay(), Marks{Gauges: m.Gauges}) // the next visit
	r := then(again, ReportToggled{}).Report
	if r.Said[RoadKind+"diesel"] != "quarters" || r.Said[RoadValue+"diesel"] != "" || r.Said[RoadKind+"grey"] != "" {
		t.Errorf("the panel begins with %v", r.Said)
	}
	again.Trip.Vehicle.ID = "another"
	if r := then(again, ReportToggled{}).Report; r.Said[RoadKind+"diesel"] != "" {
		t.Errorf("another vehicle's gauge is %q", r.Said[RoadKind+"diesel"])
	}
}
