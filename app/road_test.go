package page

import (
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/planner/trip"
)

// underWay is the sample trip, its vehicle with the tanks that the plan has.
func underWay() Model {
	t := sampleTrip()
	var tanks []trip.Tank
	for _, k := range t.Vehicle.Tanks {
		if slices.ContainsFunc(samplePlan().Strips, func(s trip.Strip) bool { return s.Tank == k.ID }) {
			k.Start = min(k.Start, k.Capacity)
			tanks = append(tanks, k)
		}
	}
	t.Vehicle.Tanks = tanks
	m := after(PlacesRead{File: File{Kind: "places"}}, TripRead{Trip: t})
	return Update(m, Answered{No: m.Wanted, Plan: samplePlan(), Last: true})
}

func TestGoingOnFromTheRoad(t *testing.T) {
	m := Update(underWay(), ReportToggled{"2026-06-13T10:00"})
	// Under way by the clock: 10:00 of day two is minute 2040, in the stop at km 200.
	if r := m.Report; r.Said[roadTime] != "2026-06-13T10:00" || r.Said[roadKm] != "200" {
		t.Fatalf("begins at %v", r.Said)
	}
	if !near(m.Cursor, m.Axis.AtKm(200).Min) {
		t.Errorf("the cursor is at %v", m.Cursor)
	}
	for _, e := range []Edited{{roadKm, "210"}, {roadTime, "2026-06-13T10:20"}, {roadKind + "diesel", "quarters"}, {roadValue + "diesel", "2"}, {roadKind + "fresh", "percent"}, {roadValue + "fresh", "80"}, {roadClosed + "n4", "true"}} {
		m = Update(m, e)
	}
	html := drawn(t, m)
	for _, want := range []string{"Old mill", "Diesel shows", "1/2", `id="f-road-closed-n4"`, "Plan from here"} {
		if !strings.Contains(html, want) {
			t.Errorf("the panel does not say %q", want)
		}
	}
	was := m.Wanted
	m = Update(m, WentOn{})
	if m.Report != nil {
		t.Fatalf("refused: %q", m.Report.Wrong)
	}
	if m.Wanted != was+1 || m.Trip.Start != "2026-06-13" || !near(m.Trip.FromMin, 620) || !near(m.Trip.DoneKm, 210) || !slices.Equal(m.Trip.Avoid, []string{"n4"}) {
		t.Errorf("the rest: plan %d, %s at %v, %v km behind, without %v", m.Wanted, m.Trip.Start, m.Trip.FromMin, m.Trip.DoneKm, m.Trip.Avoid)
	}
	if len(m.News) < 2 || len(m.Trip.Done) != 3 {
		t.Errorf("told %q, %d stops behind, want two gauges and three stops", m.News, len(m.Trip.Done))
	}
	plan := samplePlan()
	plan.Done = m.Trip.Done
	m = Update(m, Answered{No: m.Wanted, Plan: plan, Last: true})
	if html := drawn(t, m); !strings.Contains(html, `id="behind"`) || !strings.Contains(html, "drain Grey water") {
		t.Error("what is behind is not shown")
	}
	if m = Update(m, WentBack{}); m.Trip.Start != "2026-06-12" || m.News != nil || m.Report == nil || m.Report.Said[roadValue+"fresh"] != "80" {
		t.Errorf("taken back it starts on %s, with %+v said", m.Trip.Start, m.Report)
	}
}

func TestWhereSomebodyIs(t *testing.T) {
	m := Update(underWay(), ReportToggled{"2031-01-01T10:00"}) // not on this trip: the plan's time counts
	m = Update(m, Edited{roadWhere, "3"})
	if r := m.Report; r.Said[roadKm] != "200" || r.Said[roadTime] != "2026-06-13T09:50" {
		t.Errorf("at stop 3: %v, want km 200 at the time planned, 2030 minutes", r.Said)
	}
	p := orb.Point{11.4, 50.25}
	m = Update(m, ReportPointed{p, 237.4})
	if n, err := m.Report.now(m); err != nil || n.At == nil || *n.At != p || m.Report.Said[roadKm] != "237.4" {
		t.Errorf("on the map: %v, %v", n, err)
	}
	m = Update(m, Edited{roadKm, "220"})
	if n, err := m.Report.now(m); err != nil || n.At != nil || !near(*n.Km, 220) {
		t.Errorf("typed after it: %v, %v", n, err)
	}
	for _, c := range []struct{ key, text, want string }{
		{roadKm, "481", "before the end of the route"}, {roadKm, "here", "Say where you are"}, {roadTime, "soon", "2026-06-13T14:20"}, {roadTime, "2026-06-01T10:00", "before the trip begins"},
	} {
		if got := Update(Update(m, Edited{c.key, c.text}), WentOn{}); got.Report == nil || !strings.Contains(got.Report.Wrong, c.want) || got.Wanted != m.Wanted {
			t.Errorf("%s %q: %+v, want %q", c.key, c.text, got.Report, c.want)
		}
	}
	wrong := Update(Update(Update(m, Edited{roadKind + "grey", "percent"}), Edited{roadValue + "grey", "120"}), WentOn{})
	if !strings.Contains(wrong.Report.Wrong, "Grey water: A number from 0 to 100.") {
		t.Errorf("120 %%: %q", wrong.Report.Wrong)
	}
}
