package model

import (
	"encoding/json"
	"reflect"
	"slices"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/model/sample"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// resumed is what is kept of a model, as the next visit reads it.
func resumed(t *testing.T, m Model) *Resumed {
	t.Helper()
	r := Resumed{Origin: OriginOf(m), Work: WorkOf(m)}
	if m.Before != nil {
		b := BeforeOf(*m.Before)
		r.Before = &b
	}
	text, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	var out Resumed
	if err := json.Unmarshal(text, &out); err != nil {
		t.Fatal(err)
	}
	return &out
}

// visited is the next visit to the trip of a model, planned.
func visited(t *testing.T, m Model) Model {
	t.Helper()
	m = then(New(trip.Fleet()), PlacesRead{File: File{Kind: "places"}}, TripRead{Trip: m.Trip, Last: resumed(t, m)})
	return then(m, Answered{No: m.Wanted, Plan: sample.Plan(), Last: true})
}

// Letters being typed are there again, and what is wrong with them.
func TestTypedIsKept(t *testing.T) {
	m := then(planned(), FormToggled{}, Edited{"adults", "x"}, Edited{FerryPrefix + "from", "12"})
	again := visited(t, m)
	if !again.Editing || !reflect.DeepEqual(again.Typed, m.Typed) || !reflect.DeepEqual(again.Wrong, m.Wrong) || again.Wrong["adults"].Nothing() {
		t.Errorf("typed %v, wrong %v; before %v, %v", again.Typed, again.Wrong, m.Typed, m.Wrong)
	}
	for _, e := range []Msg{Edited{"adults", "x"}, Edited{FerryPrefix + "from", "1"}, FormToggled{}} {
		if len(todo[SaveTrip](planned(), e)) == 0 {
			t.Errorf("%+v is not kept", e)
		}
	}
}

// Steps of a drawing can be taken back and made again after a reload as before it.
func TestStepsAreKept(t *testing.T) {
	m := then(planned(), DrawBegan{}, DrawnPoint{pa}, DrawnPoint{pb}, DrawnPoint{pc}, DrawnMove{1, bend}, DrawnChoice{1}, DrawnRemove{}, DrawUndone{}, DrawUndone{}, DrawnChoice{2})
	again := visited(t, m)
	if again.Draft == nil || again.Draft.Chosen != 3 {
		t.Fatalf("the drawing is %+v", again.Draft)
	}
	for _, msgs := range [][]Msg{{}, {DrawUndone{}}, {DrawUndone{}, DrawUndone{}, DrawUndone{}, DrawUndone{}}, {DrawRedone{}}, {DrawRedone{}, DrawRedone{}, DrawRedone{}}} {
		if got, want := then(again, msgs...).Draft.Points, then(m, msgs...).Draft.Points; !got.Equal(want) {
			t.Errorf("after %T the points are %v, want %v", msgs, got, want)
		}
	}
	many := m
	for range 3 * mostSteps {
		many = then(many, DrawnPoint{orb.Point{1, 2}})
	}
	if n := len(visited(t, many).Draft.Before); n != mostSteps {
		t.Errorf("%d steps are kept", n)
	}
	for _, broken := range []KeptDraft{{}, {Steps: [][]int{{0}}}, {Points: orb.LineString{pa}, Steps: [][]int{{-1}}}, {Steps: [][]int{{}}, Now: 1}} {
		if d := broken.draft(); d != nil {
			t.Errorf("%+v is taken for the drawing %+v", broken, d)
		}
	}
}

// What is said on the road is there again once there is a plan, and a plan from there
// can be taken back as before.
func TestReportIsKept(t *testing.T) {
	m := then(underWay(), ReportToggled{}, Edited{RoadKind + "diesel", "quarters"}, Edited{RoadValue + "diesel", "2"}, Edited{RoadOther, "n1"})
	again := visited(t, m)
	if again.Report == nil || !reflect.DeepEqual(again.Report.Said, m.Report.Said) || !slices.Equal(again.Report.Closed, m.Report.Closed) {
		t.Errorf("the report is %+v, was %+v", again.Report, m.Report)
	}
	waiting := then(New(trip.Fleet()), TripRead{Trip: m.Trip, Last: resumed(t, m)})
	if waiting.Report != nil || WorkOf(waiting).Report == nil {
		t.Error("the report is shown without a plan, or forgotten until there is one")
	}
	shut := then(m, ReportToggled{})
	if again := visited(t, shut); again.Report != nil || len(todo[SaveTrip](m, ReportToggled{})) == 0 {
		t.Error("a report that was shut is there again")
	}
	m.Before = &Before{Trip: m.Trip, Report: *m.Report, Ticks: []string{"stop/n1"}, Origin: Origin{Track: m.Trip.Route}}
	back, was := then(visited(t, m), WentBack{}), then(m, WentBack{})
	if !reflect.DeepEqual(back.Trip, was.Trip) || !reflect.DeepEqual(back.Ticks, was.Ticks) || !reflect.DeepEqual(back.Origin, was.Origin) || !reflect.DeepEqual(back.Report, was.Report) {
		t.Errorf("taken back %+v, want %+v", back.Report, was.Report)
	}
}

// Without its map a trip is not planned: nothing stands in for it, until it is there.
func TestMapMissing(t *testing.T) {
	m := after(MapMissing{Missing{Name: "andorra.osm.pbf"}}, TripRead{Trip: sample.Trip(), Last: &Resumed{}})
	if m.Phase != Failed || m.Failure.Kind != "status.no_map" || m.Wanted != 0 {
		t.Errorf("without a map: %s, %v, %d plans wanted", m.Phase, m.Failure, m.Wanted)
	}
	if other := then(m, PlacesRead{File: File{Name: "b", Kind: "places"}}); other.Phase != Planning || len(other.Missing) != 0 {
		t.Errorf("with another map: %s, missing %v", other.Phase, other.Missing)
	}
	if m = then(m, PlacesRead{File: File{Name: "b", Kind: "places"}, Add: true}); m.Phase != Planning || len(m.Missing) != 1 {
		t.Errorf("with the other map of the last visit: %s, missing %v", m.Phase, m.Missing)
	}
	if full := then(planned(), MapMissing{Missing{"a", true}}); full.Phase != Ready {
		t.Errorf("a map that is here and finds no room: %s", full.Phase)
	}
}

// What another tab does is told, and what is to be done about it is a press.
func TestOvertaken(t *testing.T) {
	m := then(planned(), Overtaken{})
	if !m.Keeping.Overtaken || len(todo[Reload](m, TakeOver{})) != 1 || len(todo[Fork](m, GoOnAsCopy{})) != 1 || then(m, GoOnAsCopy{}).Keeping.Overtaken {
		t.Error("there is no way out")
	}
}

// What cannot be read is said, can be had, and one press goes on without it.
func TestUnread(t *testing.T) {
	m := after(KeptUnread{Unread{ID: "x", Says: fact.Of("kept.newer.trip", nil)}})
	if m.Phase != Failed || len(todo[SaveUnread](m, UnreadSaved{"x"})) != 1 || len(todo[OpenFresh](m, FreshAsked{})) != 1 {
		t.Errorf("%s: there is no way out", m.Phase)
	}
	if fresh := then(m, FreshAsked{}, TripRead{Trip: sample.Trip()}); len(fresh.Unread) != 1 || !fresh.Unread[0].Set || m.Unread[0].Set {
		t.Errorf("%+v", fresh.Unread)
	}
}

// Whatever is half done is something.
func TestNothingHalfDone(t *testing.T) {
	for _, tc := range []struct {
		name string
		m    Model
		want bool
	}{
		{"planned", planned(), true},
		{"the form open", then(planned(), FormToggled{}), false},
		{"letters typed", then(planned(), Edited{"adults", "x"}), false},
		{"a drawing", drawn(orb.LineString{pa}), false},
		{"a report", then(underWay(), ReportToggled{}), false},
	} {
		if got := WorkOf(tc.m).Nothing(); got != tc.want {
			t.Errorf("%s: nothing is half done: %v", tc.name, got)
		}
	}
}
