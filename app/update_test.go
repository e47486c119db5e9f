package page

import (
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"ullage/app/say"
	"ullage/planner"
	"ullage/planner/trip"
)

// after runs messages from the beginning.
func after(msgs ...Msg) Model {
	m := New(trip.Fleet())
	for _, msg := range msgs {
		m = Update(m, msg)
	}
	return m
}

// planned is a page with the sample trip and its plan.
func planned() Model {
	m := after(PlacesRead{File: File{Name: "a.osm.pbf", Kind: "places"}}, TripRead{Trip: sampleTrip()})
	return Update(m, Answered{No: m.Wanted, Plan: samplePlan(), Last: true})
}

func TestPhases(t *testing.T) {
	refused := samplePlan()
	refused.Status = planner.Infeasible
	unknown := samplePlan()
	unknown.Status = planner.Unknown
	start := []Msg{PlacesRead{File: File{Kind: "places"}}, TripRead{Trip: sampleTrip()}}
	for _, tc := range []struct {
		name string
		msgs []Msg
		want Phase
	}{
		{"at first", nil, Loading},
		{"places without a trip", start[:1], Loading},
		{"places and a trip", start, Planning},
		{"a first plan", append(start[:2:2], Answered{No: 1, Plan: samplePlan()}), Planning},
		{"the last plan", append(start[:2:2], Answered{No: 1, Plan: samplePlan(), Last: true}), Planned},
		{"a refusal", append(start[:2:2], Answered{No: 1, Plan: refused, Last: true}), Refused},
		{"no answer in time", append(start[:2:2], Answered{No: 1, Plan: unknown, Last: true}), Failed},
		{"a failure", append(start[:2:2], PlanFailed{No: 1, Why: "no"}), Failed},
		{"an old failure", append(start[:2:2], PlanFailed{No: 0, Why: "no"}), Planning},
		{"a file that cannot be read", []Msg{OpenFailed{"x", "no"}}, Failed},
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
	again := Update(m, Answered{No: m.Wanted, Plan: samplePlan(), Last: true})
	if again.Saves != m.Saves || again.Wanted != m.Wanted {
		t.Error("the same plan with more to say is saved or planned again")
	}
	if edited := Update(m, Edited{"adults", "3"}); len(edited.Trip.Keep) != 4 || edited.Wanted == m.Wanted {
		t.Errorf("after a change it keeps %q", edited.Trip.Keep)
	}
	if fresh := Update(m, Afresh{}); fresh.Trip.Keep != nil || fresh.Wanted != m.Wanted+1 {
		t.Errorf("afresh it keeps %q", fresh.Trip.Keep)
	}
	if other := Update(m, RouteRead{Line: sampleTrip().Route}); other.Trip.Keep != nil {
		t.Errorf("on another route it keeps %q", other.Trip.Keep)
	}
	first := Update(after(PlacesRead{File: File{Kind: "places"}}, TripRead{Trip: sampleTrip()}), Answered{No: 1, Plan: samplePlan()})
	if first.Trip.Keep != nil {
		t.Error("a plan that may still get better is kept")
	}
}

func TestOnlyTheLatestPlanIsShown(t *testing.T) {
	m := planned()
	old := m.Wanted
	m = Update(m, Edited{"adults", "3"})
	if m.Wanted != old+1 || m.Trip.Party.Adults != 3 {
		t.Fatalf("an edit wants plan %d with %d adults, want %d with 3", m.Wanted, m.Trip.Party.Adults, old+1)
	}
	late := samplePlan()
	late.Cost = 999
	if m = Update(m, Answered{No: old, Plan: late, Last: true}); m.Plan.Cost == 999 || m.Phase != Planning {
		t.Error("an answer to an older question is shown")
	}
	if !m.HasPlan() {
		t.Error("the plan before is gone while a new one is made")
	}
}

func TestWrongTextStaysBesideItsField(t *testing.T) {
	m := planned()
	was := m.Wanted
	m = Update(m, Edited{"adults", "many"})
	if m.Typed["adults"] != "many" || !strings.Contains(m.Wrong["adults"], "1 to 20") {
		t.Errorf("typed %q, wrong %q", m.Typed["adults"], m.Wrong["adults"])
	}
	if m.Wanted != was || m.Trip.Party.Adults != 2 {
		t.Error("wrong text changed the trip")
	}
	m = Update(m, Edited{"max_km", "200"})
	if m.Typed["adults"] != "many" || m.Wanted != was+1 {
		t.Error("another field lost what was typed, or did not plan")
	}
	m = Update(m, Edited{"adults", "4"})
	if m.Wrong["adults"] != "" || m.Trip.Party.Adults != 4 {
		t.Errorf("right text still wrong: %q", m.Wrong["adults"])
	}
}

func TestAnEditThatChangesNothingPlansNothing(t *testing.T) {
	m := planned()
	if got := Update(m, Edited{"max_km", "250.0"}); got.Wanted != m.Wanted {
		t.Error("250.0 km in place of 250 asks for a plan")
	}
}

func TestAnotherVehicleBringsItsOwnTanks(t *testing.T) {
	m := Update(planned(), Edited{"level:diesel", "40"})
	if m.Trip.Levels["diesel"] != 40 {
		t.Fatalf("level is %v, want 40", m.Trip.Levels["diesel"])
	}
	m = Update(m, Edited{"vehicle", trip.Fleet()[0].ID})
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
			m = Update(m, msg)
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
		m = Update(m, msg)
	}
	if got := m.Draft.Points; len(got) != 3 || got[1] != b || got[2] != c {
		t.Fatalf("draft is %v", got)
	}
	if kept := Update(m, DrawEnded{}); kept.Trip.Route[0] != sampleTrip().Route[0] || kept.Draft != nil || kept.Wanted != m.Wanted {
		t.Error("a cancelled drawing changed the trip")
	}
	cleared := Update(Update(m, DrawCleared{}), DrawUndone{})
	if len(cleared.Draft.Points) != 3 {
		t.Error("undo does not bring a cleared line back")
	}
	m = Update(m, DrawEnded{Keep: true})
	if len(m.Trip.Route) != 3 || m.Phase != Planning || m.Draft != nil {
		t.Errorf("drawn route has %d points in phase %s", len(m.Trip.Route), m.Phase)
	}
}

func TestAvoidedPlacesComeBack(t *testing.T) {
	m := Update(planned(), Avoided{"n1"})
	if len(m.Trip.Avoid) != 1 || m.Phase != Planning {
		t.Fatalf("avoids %v", m.Trip.Avoid)
	}
	if m = Update(m, Avoided{"n1"}); len(m.Trip.Avoid) != 0 {
		t.Errorf("avoids %v", m.Trip.Avoid)
	}
}

// What a model points to is never changed by a later message.
func TestUpdateKeepsOldModels(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := planned()
		var keys []string
		for _, f := range fieldsOf(m.Trip, m.Fleet, m.Say) {
			keys = append(keys, f.Key)
		}
		for range 8 {
			texts := shown(m)
			key := rapid.SampledFrom(keys).Draw(t, "field")
			next := Update(m, Edited{key, rapid.SampledFrom([]string{"", "1", "2", "12.5", "true", "sites", "2026-07-01", "10:30", "ulmar", "x"}).Draw(t, "text")})
			if got := shown(m); got != texts {
				t.Fatalf("%s changed the model before:\n%s\n%s", key, texts, got)
			}
			if next.Trip.Vehicle.ID == m.Trip.Vehicle.ID {
				m = next
			}
		}
	})
}

func shown(m Model) string {
	var b strings.Builder
	for _, f := range fieldsOf(m.Trip, m.Fleet, m.Say) {
		b.WriteString(f.Key + "=" + f.Get(m.Trip) + " ")
	}
	return b.String()
}

// Every field takes back the text that it shows, in all units.
func TestFieldsRoundTrip(t *testing.T) {
	for _, u := range unitChoices {
		testFields(t, fieldsOf(sampleTrip(), trip.Fleet(), say.Voice{Units: u.Value}))
	}
}

func testFields(t *testing.T, fields []Field) {
	for _, f := range fields {
		got, err := f.Set(sampleTrip(), f.Get(sampleTrip()))
		if err != nil {
			t.Errorf("%s does not take %q: %v", f.Key, f.Get(sampleTrip()), err)
		} else if f.Get(got) != f.Get(sampleTrip()) {
			t.Errorf("%s: %q became %q", f.Key, f.Get(sampleTrip()), f.Get(got))
		}
		if f.Label == "" || f.Group == "" || f.Input == "" {
			t.Errorf("%s has no label, group or input", f.Key)
		}
		if f.Input == "number" || f.Input == "whole" {
			if _, err := f.Set(sampleTrip(), "-1"); err == nil {
				t.Errorf("%s takes −1", f.Key)
			}
			if _, err := f.Set(sampleTrip(), "NaN"); err == nil {
				t.Errorf("%s takes NaN", f.Key)
			}
		}
	}
}
