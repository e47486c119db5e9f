package page

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/browser"
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

// madeOf is the stops of the report that were called at.
func madeOf(m Model) string {
	var out []string
	for _, v := range m.Report.visits(m) {
		out = append(out, fmt.Sprintf("%s:%v", v.Call.Stop, v.Made))
	}
	return strings.Join(out, " ")
}

// Which stops were called at: what is said, else the ticks if there are any,
// else all that the clock leaves time for.
func TestWhichStopsWereCalledAt(t *testing.T) {
	at := func(m Model, now, km string) Model {
		return Update(Update(m, ReportToggled{now}), Edited{roadKm, km})
	}
	if got := madeOf(at(underWay(), "2026-06-13T10:20", "210")); got != "n1:true n2:true n3:true" {
		t.Errorf("nobody ticks: %s", got)
	}
	if got := madeOf(at(underWay(), "2026-06-12T18:00", "210")); got != "n1:true n2:false n3:true" {
		t.Errorf("on the first evening the night is not spent: %s", got)
	}
	m := Update(underWay(), Ticked{"stop/n1"})
	if html := drawn(t, m); strings.Count(html, `class="next"`) != 1 || !strings.Contains(html, `class="call made"`) {
		t.Error("neither what is done nor what is next is marked")
	}
	m = at(m, "2026-06-13T10:20", "210")
	if got := madeOf(m); got != "n1:true n2:false n3:false" {
		t.Errorf("one is ticked: %s", got)
	}
	m = Update(m, Edited{roadMade + "n3", "true"})
	if got := madeOf(m); got != "n1:true n2:false n3:true" {
		t.Errorf("one is ticked, one is said: %s", got)
	}
	marks := m.Marks
	m = Update(m, WentOn{})
	if m.Report != nil || len(m.Trip.Done) != 2 || len(m.Ticks) != 0 || m.Marks == marks {
		t.Fatalf("%+v: history %+v, ticks %q", m.Report, m.Trip.Done, m.Ticks)
	}
	if !strings.Contains(strings.Join(m.News, " "), "Passed without a call: Dune field.") {
		t.Errorf("told %q", m.News)
	}
	if m = Update(m, WentBack{}); !slices.Equal(m.Ticks, []string{"stop/n1"}) || madeOf(m) != "n1:true n2:false n3:true" {
		t.Errorf("taken back: ticks %q, %s", m.Ticks, madeOf(m))
	}
	// Ticks of stops are of one trip; a reload is the same one.
	ticked := Update(Update(m, Ticked{"set-off/gas"}), ReportToggled{})
	for _, c := range []struct {
		msg  Msg
		want string
	}{{TripRead{Trip: sampleTrip(), Last: true}, "set-off/gas stop/n1"}, {TripRead{Trip: sampleTrip()}, "set-off/gas"}, {RouteRead{Line: sampleTrip().Route}, "set-off/gas"}} {
		if got := strings.Join(Update(ticked, c.msg).Ticks, " "); got != c.want {
			t.Errorf("%T: ticks %q, want %q", c.msg, got, c.want)
		}
	}
}

// The kind of a gauge is remembered for a tank of a vehicle; its reading is not.
func TestGaugesAreRemembered(t *testing.T) {
	m := Update(underWay(), ReportToggled{})
	for _, e := range []Edited{{roadKind + "diesel", "quarters"}, {roadValue + "diesel", "2"}, {roadKind + "grey", "lamp"}, {roadKind + "grey", ""}} {
		m = Update(m, e)
	}
	again := Update(underWay(), Marks{Gauges: m.Gauges}) // the next visit
	r := Update(again, ReportToggled{}).Report
	if r.Said[roadKind+"diesel"] != "quarters" || r.Said[roadValue+"diesel"] != "" || r.Said[roadKind+"grey"] != "" {
		t.Errorf("the panel begins with %v", r.Said)
	}
	if m.Marks != underWay().Marks+3 {
		t.Errorf("kept %d times, want 3: each choice of a kind", m.Marks)
	}
	again.Trip.Vehicle.ID = "another"
	if r := Update(again, ReportToggled{}).Report; r.Said[roadKind+"diesel"] != "" {
		t.Errorf("another vehicle's gauge is %q", r.Said[roadKind+"diesel"])
	}
}

// What the device says is where somebody is; why it says nothing is told, and
// what was said before stays.
func TestTheDeviceSaysWhere(t *testing.T) {
	m := Update(Update(underWay(), ReportToggled{"2026-06-13T10:20"}), HereAsked{})
	if !m.Report.Asking || !strings.Contains(drawn(t, m), word.roadAsking) {
		t.Error("that the device is asked is not said")
	}
	on, _ := along(sampleTrip().Route, 0.5)
	m = Update(m, HereFound{on, 20})
	km, _ := m.Report.here(m)
	if m.Report.At == nil || *m.Report.At != on || m.Report.Asking || !strings.Contains(m.Report.Device, "to within 20"+thin+"m.") {
		t.Fatalf("found: %+v", m.Report)
	}
	beside := orb.Point{on[0], on[1] + 0.05}
	if d := Update(m, HereFound{beside, 2000}).Report.Device; !strings.Contains(d, "to within 2"+thin+"km; the route is ") {
		t.Errorf("beside the route: %q", d)
	}
	m.Say.Units = "american"
	if d := Update(m, HereFound{on, 20}).Report.Device; !strings.Contains(d, "66"+thin+"ft") || !strings.Contains(d, "mile"+thin) {
		t.Errorf("in feet: %q", d)
	}
	m.Say.Units = ""
	for _, c := range []struct {
		msg  Msg
		want string
	}{
		{HereFound{orb.Point{-70, 10}, 20}, "more than 50 km off the route"},
		{HereUnknown{browser.ErrNotAllowed}, "may not know"},
		{HereUnknown{browser.ErrTooLong}, "in time"},
		{HereUnknown{errors.New("no such thing")}, "does not know where it is"},
	} {
		got := Update(m, c.msg)
		if still, _ := got.Report.here(got); !strings.Contains(got.Report.Lost, c.want) || still != km || !strings.Contains(drawn(t, got), `id="here-lost"`) {
			t.Errorf("%+v: %q, km %v", c.msg, got.Report.Lost, still)
		}
	}
	if late := Update(Update(m, ReportToggled{}), HereFound{on, 20}); late.Report != nil {
		t.Error("an answer after the panel was shut opens it")
	}
}
