package model

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/field"
	"ullage/app/model/sample"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// after runs messages from the beginning.
func after(msgs ...Msg) Model { return then(New(trip.Fleet()), msgs...) }

// then is the model after messages.
func then(m Model, msgs ...Msg) Model {
	for _, msg := range msgs {
		m, _ = Update(m, msg)
	}
	return m
}

// todo is what is to be done because of a message.
func todo[E Effect](m Model, msg Msg) (out []E) {
	_, effects := Update(m, msg)
	for _, e := range effects {
		if e, ok := e.(E); ok {
			out = append(out, e)
		}
	}
	return out
}

// planned is a page with the sample trip and its plan.
func planned() Model {
	m := after(PlacesRead{File: File{Name: "a.osm.pbf", Kind: "places"}}, TripRead{Trip: sample.Trip()})
	return then(m, Answered{No: m.Wanted, Plan: sample.Plan(), Last: true})
}

func TestPhases(t *testing.T) {
	refused := sample.Plan()
	refused.Status = planner.Infeasible
	unknown := sample.Plan()
	unknown.Status = planner.Unknown
	start := []Msg{PlacesRead{File: File{Kind: "places"}}, TripRead{Trip: sample.Trip()}}
	for _, tc := range []struct {
		name string
		msgs []Msg
		want Phase
	}{
		{"at first", nil, Loading},
		{"places without a trip", start[:1], Loading},
		{"places and a trip", start, Planning},
		{"a first plan", append(start[:2:2], Answered{No: 1, Plan: sample.Plan()}), Planning},
		{"the last plan", append(start[:2:2], Answered{No: 1, Plan: sample.Plan(), Last: true}), Ready},
		{"a refusal", append(start[:2:2], Answered{No: 1, Plan: refused, Last: true}), Refused},
		{"no answer in time", append(start[:2:2], Answered{No: 1, Plan: unknown, Last: true}), Failed},
		{"a failure", append(start[:2:2], PlanFailed{No: 1, Why: fact.Text("no")}), Failed},
		{"an old failure", append(start[:2:2], PlanFailed{No: 0, Why: fact.Text("no")}), Planning},
		{"a file that cannot be read", []Msg{OpenFailed{"x", fact.Text("no")}}, Failed},
		{"a fleet before any trip", []Msg{Opening{"f"}, FleetRead{trip.Fleet()[:1]}}, Failed},
	} {
		t.Run(tc.name, func(t *testing.T) {
			if got := after(tc.msgs...).Phase; got != tc.want {
				t.Errorf("phase is %q, want %q", got, tc.want)
			}
		})
	}
}

// A plan that is done is in use: the next one is asked to keep its stops,
// until a person wants it afresh or the route is another.
func TestThePlanInUseIsKept(t *testing.T) {
	m := planned()
	if got, want := strings.Join(m.Trip.Keep, " "), "n1 n2 n3 n4"; got != want {
		t.Errorf("keeps %q, want %q", got, want)
	}
	if more := (Answered{No: m.Wanted, Plan: sample.Plan(), Last: true}); len(todo[Effect](m, more)) > 0 {
		t.Error("the same plan with more to say is saved or planned again")
	}
	if edited := then(m, Edited{"adults", "3"}); len(edited.Trip.Keep) != 4 || edited.Wanted == m.Wanted {
		t.Errorf("after a change it keeps %q", edited.Trip.Keep)
	}
	if fresh := then(m, Afresh{}); fresh.Trip.Keep != nil || fresh.Wanted != m.Wanted+1 {
		t.Errorf("afresh it keeps %q", fresh.Trip.Keep)
	}
	if other := then(m, RouteRead{Line: sample.Trip().Route}); other.Trip.Keep != nil {
		t.Errorf("on another route it keeps %q", other.Trip.Keep)
	}
	first := then(after(PlacesRead{File: File{Kind: "places"}}, TripRead{Trip: sample.Trip()}), Answered{No: 1, Plan: sample.Plan()})
	if first.Trip.Keep != nil {
		t.Error("a plan that may still get better is kept")
	}
}

func TestOnlyTheLatestPlanIsShown(t *testing.T) {
	m := planned()
	old := m.Wanted
	m = then(m, Edited{"adults", "3"})
	if m.Wanted != old+1 || m.Trip.Party.Adults != 3 {
		t.Fatalf("an edit wants plan %d with %d adults, want %d with 3", m.Wanted, m.Trip.Party.Adults, old+1)
	}
	late := sample.Plan()
	late.Cost = 999
	if m = then(m, Answered{No: old, Plan: late, Last: true}); m.Plan.Cost == 999 || m.Phase != Planning {
		t.Error("an answer to an older question is shown")
	}
	if !m.HasPlan() {
		t.Error("the plan before is gone while a new one is made")
	}
}

func TestWrongTextStaysBesideItsField(t *testing.T) {
	m := planned()
	was := m.Wanted
	m = then(m, Edited{"adults", "many"})
	if m.Typed["adults"] != "many" || !strings.Contains(m.Say.Fact(m.Wrong["adults"]), "1 to 20") {
		t.Errorf("typed %q, wrong %v", m.Typed["adults"], m.Wrong["adults"])
	}
	if m.Wanted != was || m.Trip.Party.Adults != 2 {
		t.Error("wrong text changed the trip")
	}
	m = then(m, Edited{"max_km", "200"})
	if m.Typed["adults"] != "many" || m.Wanted != was+1 {
		t.Error("another field lost what was typed, or did not plan")
	}
	m = then(m, Edited{"adults", "4"})
	if !m.Wrong["adults"].Nothing() || m.Trip.Party.Adults != 4 {
		t.Errorf("right text still wrong: %v", m.Wrong["adults"])
	}
}

func TestAnEditThatChangesNothingPlansNothing(t *testing.T) {
	m := planned()
	if got := then(m, Edited{"max_km", "250.0"}); got.Wanted != m.Wanted {
		t.Error("250.0 km in place of 250 asks for a plan")
	}
}

func TestAnotherVehicleBringsItsOwnTanks(t *testing.T) {
	m := then(planned(), Edited{"level:diesel", "40"})
	if m.Trip.Levels["diesel"] != 40 {
		t.Fatalf("level is %v, want 40", m.Trip.Levels["diesel"])
	}
	m = then(m, Edited{"vehicle", trip.Fleet()[0].ID})
	if m.Trip.Levels != nil || m.Typed != nil || m.Trip.Vehicle.ID != trip.Fleet()[0].ID {
		t.Errorf("levels %v, typed %v, vehicle %s", m.Trip.Levels, m.Typed, m.Trip.Vehicle.ID)
	}
}

func TestCursor(t *testing.T) {
	for _, tc := range []struct {
		name string
		msgs []Msg
		want float64
	}{
		{"at first the start", nil, 540},
		{"a time", []Msg{PointedMin{700}}, 700},
		{"before the start", []Msg{PointedMin{-5}}, 540},
		{"the end", []Msg{PointedX{1}}, 3600},
		{"beyond the end", []Msg{PointedX{1}, Stepped{1}}, 3600},
		{"a place on the route", []Msg{PointedKm{90}}, 630},
		{"the next stop", []Msg{Skipped{1}}, 630},
		{"two stops on", []Msg{Skipped{1}, Skipped{1}}, 720},
		{"and back", []Msg{Skipped{1}, Skipped{1}, Skipped{-1}}, 630},
		{"no stop before the first", []Msg{Skipped{1}, Skipped{-1}}, 630},
	} {
		m := planned()
		for _, msg := range tc.msgs {
			m = then(m, msg)
		}
		if !near(m.Cursor, tc.want) {
			t.Errorf("%s: cursor at %v, want %v", tc.name, m.Cursor, tc.want)
		}
	}
}

func TestDrawing(t *testing.T) {
	a, b, c := orb.Point{1, 1}, orb.Point{2, 1}, orb.Point{3, 2}
	m := planned()
	for _, msg := range []Msg{DrawBegan{}, DrawnPoint{a}, DrawnPoint{b}, DrawnMove{1, c}, DrawUndone{}, DrawnPoint{c}, DrawnMove{7, a}} {
		m = then(m, msg)
	}
	if got := m.Draft.Points; len(got) != 3 || got[1] != b || got[2] != c {
		t.Fatalf("draft is %v", got)
	}
	if kept := then(m, DrawEnded{}); kept.Trip.Route[0] != sample.Trip().Route[0] || kept.Draft != nil || kept.Wanted != m.Wanted {
		t.Error("a cancelled drawing changed the trip")
	}
	cleared := then(then(m, DrawCleared{}), DrawUndone{})
	if len(cleared.Draft.Points) != 3 {
		t.Error("undo does not bring a cleared line back")
	}
	m = then(m, DrawEnded{Keep: true})
	if len(m.Trip.Route) != 3 || m.Phase != Planning || m.Draft != nil {
		t.Errorf("drawn route has %d points in phase %s", len(m.Trip.Route), m.Phase)
	}
}

func TestAvoidedPlacesComeBack(t *testing.T) {
	m := then(planned(), Avoided{"n1"})
	if len(m.Trip.Avoid) != 1 || m.Phase != Planning {
		t.Fatalf("avoids %v", m.Trip.Avoid)
	}
	if m = then(m, Avoided{"n1"}); len(m.Trip.Avoid) != 0 {
		t.Errorf("avoids %v", m.Trip.Avoid)
	}
}

func near(a, b float64) bool { return math.Abs(a-b) < 1e-6 }

// thin is the narrow space of the page.
const thin = "\u202f"

var (
	pa, pb, pc = orb.Point{1, 1}, orb.Point{2, 1}, orb.Point{3, 2}
	bend       = orb.Point{1.5, 1.4}
)

// What a message has done: a plan asked for and the trip kept, or less.
func TestEffects(t *testing.T) {
	m := planned()
	for _, tc := range []struct {
		msg  Msg
		want []Effect
	}{
		{Edited{"adults", "3"}, []Effect{SaveTrip{}, AskPlan{m.Wanted + 1, true, "adults"}}},
		{Edited{"adults", "x"}, []Effect{SaveTrip{}}},
		{Edited{field.Units, "british"}, []Effect{SaveMarks{}, SaveTrip{}}},
		{Avoided{"n1"}, []Effect{SaveTrip{}, AskPlan{m.Wanted + 1, false, "avoid"}}},
		{Ticked{"set-off/gas"}, []Effect{SaveMarks{}}},
		{RoundAsked{}, []Effect{MatchTrack{m.Trip.Route}}},
		{DrawBegan{}, []Effect{ShowMap{}}},
		{PointedX{1}, []Effect{ShowStop{4}}},
		{PointedMin{3000}, nil},
		{HereAsked{}, nil},
		{Opening{"a"}, nil},
	} {
		if got := todo[Effect](m, tc.msg); !reflect.DeepEqual(got, tc.want) {
			t.Errorf("%T%+v: to do %v, want %v", tc.msg, tc.msg, got, tc.want)
		}
	}
	if got := todo[Locate](then(m, ReportToggled{}), HereAsked{}); len(got) != 1 {
		t.Errorf("asked where somebody is, %v is to do", got)
	}
}
