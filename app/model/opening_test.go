package model

import (
	"testing"

	"ullage/app/draw"
	"ullage/app/model/sample"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// While a file is read the page says which and how far, from nothing on.
func TestReading(t *testing.T) {
	m := then(planned(), Opening{"a.osm.pbf"}, Progress{0.4}, Opening{"b.osm.pbf"})
	if m.Phase != Loading || m.Reading != "b.osm.pbf" || m.Progress != 0 {
		t.Errorf("%s %s, %v", m.Phase, m.Reading, m.Progress)
	}
	for _, tc := range []struct{ said, want float64 }{{-1, 0}, {0.5, 0.5}, {2, 1}} {
		if got := then(m, Progress{tc.said}).Progress; got != tc.want {
			t.Errorf("progress %v is shown as %v", tc.said, got)
		}
	}
	if late := then(m, OpenFailed{"b.osm.pbf", fact.Text("no")}, Progress{0.5}); late.Progress != 0 {
		t.Error("a file that is not read any more goes on")
	}
}

// Places take the place of those before, or stand beside them; so does what is
// drawn behind, unless there is none.
func TestPlacesRead(t *testing.T) {
	m := then(planned(), RouteRead{File: File{Name: "r", Kind: "route"}, Line: sample.Trip().Route},
		PlacesRead{File: File{Name: "b", Kind: "places"}, Ground: "old"}, GroundRead{draw.Backdrop{Towns: []draw.Town{{Name: "Aston"}}}})
	for _, tc := range []struct {
		name   string
		msg    PlacesRead
		files  string
		ground string
		towns  int
	}{
		{"others", PlacesRead{File: File{Name: "c", Kind: "places"}, Ground: "new"}, "rc", "new", 0},
		{"more", PlacesRead{File: File{Name: "c", Kind: "places"}, Add: true, Ground: "new"}, "rbc", "new", 0},
		{"without a backdrop", PlacesRead{File: File{Name: "c", Kind: "places"}}, "rc", "old", 1},
	} {
		got := then(m, tc.msg)
		files := ""
		for _, f := range got.Files {
			files += f.Name
		}
		if files != tc.files || got.Ground != tc.ground || len(got.Backdrop.Towns) != tc.towns || got.Wanted != m.Wanted+1 {
			t.Errorf("%s: files %q, ground %q with %d towns, plan %d", tc.name, files, got.Ground, len(got.Backdrop.Towns), got.Wanted-m.Wanted)
		}
	}
}

// A fleet asks for no plan: the page is as ready as it was.
func TestFleetRead(t *testing.T) {
	for _, tc := range []struct {
		name string
		m    Model
		want Phase
	}{
		{"with a plan", then(planned(), Opening{"fleet"}), Ready},
		{"without", then(New(trip.Fleet()), Opening{"fleet"}), Failed},
		{"while planning", then(planned(), Afresh{}), Planning},
	} {
		got := then(tc.m, FleetRead{trip.Fleet()[:1]})
		if got.Phase != tc.want || len(got.Fleet) != 1 || got.Wanted != tc.m.Wanted {
			t.Errorf("%s: %s with %d vehicles, want %s", tc.name, got.Phase, len(got.Fleet), tc.want)
		}
		if tc.want == Failed && got.Failure.Nothing() {
			t.Error("it fails and does not say why")
		}
	}
}

// What does not stop the plan is said, and stops nothing.
func TestTroubles(t *testing.T) {
	for _, tc := range []struct {
		msg  Msg
		want func(Model) bool
	}{
		{NotKept{"no room"}, func(m Model) bool { return m.Trouble.Kind == "page.not_kept" }},
		{NotSaved{"no room"}, func(m Model) bool { return m.Trouble.Kind == "page.not_saved" }},
		{NotMatched{"too far"}, func(m Model) bool { return m.Trouble.Kind == "track.not_matched" }},
		{VersionWaits{}, func(m Model) bool { return m.Waiting }},
		{OfflineReady{}, func(m Model) bool { return m.Offline }},
		{FormToggled{}, func(m Model) bool { return m.Editing && !then(m, FormToggled{}).Editing }},
	} {
		m := planned()
		got := then(m, tc.msg)
		if tc.want(m) || !tc.want(got) || got.Phase != Ready || got.Wanted != m.Wanted {
			t.Errorf("%T: %v, waiting %v, offline %v, %s", tc.msg, got.Trouble, got.Waiting, got.Offline, got.Phase)
		}
	}
	if got := then(planned(), Broke{"a fault"}); got.Phase != Failed || got.Failure.Nothing() {
		t.Errorf("broken, it is %s: %v", got.Phase, got.Failure)
	}
}
