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

// The panel begins at the clock's place if the trip is under way, from its first
// minute to its last; else at the cursor. It is not before a stop that is ticked.
func TestReportBegins(t *testing.T) {
	for _, tc := range []struct {
		now    string
		ticked bool
		clock  bool
		km     string
	}{
		{"2026-06-12T08:59", false, false, "0"},
		{"2026-06-12T09:00", false, true, "0"},
		{"2026-06-14T12:00", false, true, "480"},
		{"2026-06-14T12:01", false, false, "0"},
		{"2026-06-13T09:50", false, true, "200"},
		{"2026-06-12T09:00", true, true, "200"},
		{"", true, false, "200"},
	} {
		m := underWay()
		if tc.ticked {
			m = then(m, Ticked{"stop/n3"})
		}
		if r := then(m, ReportToggled{tc.now}).Report; r.Clock != tc.clock || r.Said[RoadKm] != tc.km || tc.clock && r.Said[RoadTime] != tc.now {
			t.Errorf("%q, a stop ticked: %v: begins with %v, by the clock: %v", tc.now, tc.ticked, r.Said, r.Clock)
		}
	}
}

// The strips show where somebody is as far as that can be read, from the very
// start on.
func TestWeLookHere(t *testing.T) {
	m := then(underWay(), ReportToggled{}, Edited{RoadKm, "200"})
	for _, tc := range []struct {
		text string
		want float64 // minutes
	}{
		{"0", 540}, {"0.5", 540.5}, {"90", 630}, {"here", 2030}, {"480", 2030}, {"479.9", 3599.9},
	} {
		if got := then(m, Edited{RoadKm, tc.text}).Cursor; !near(got, tc.want) {
			t.Errorf("at km %s the strips show minute %v, want %v", tc.text, got, tc.want)
		}
	}
}

// A place is closed once, and open again.
func TestClosedPlaces(t *testing.T) {
	m := then(underWay(), ReportToggled{})
	for _, tc := range []struct {
		key, text string
		want      string
	}{
		{RoadClosed + "n1", "true", "n1"}, {RoadClosed + "n1", "true", "n1"}, {RoadOther, "n9", "n1 n9"}, {RoadOther, "n9", "n1 n9"},
		{RoadOther, "", "n1 n9"}, {RoadClosed + "n1", "false", "n9"}, {RoadClosed + "n9", "", ""},
	} {
		if m = then(m, Edited{tc.key, tc.text}); strings.Join(m.Report.Closed, " ") != tc.want || m.Report.Said[RoadOther] != "" {
			t.Errorf("%s %q: closed are %q, want %q", tc.key, tc.text, m.Report.Closed, tc.want)
		}
	}
}
