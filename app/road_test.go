package page

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/model"
	"ullage/app/model/sample"
	"ullage/planner/trip"
)

func TestGoingOnFromTheRoad(t *testing.T) {
	m := then(underWay(), model.ReportToggled{Now: "2026-06-13T10:00"})
	// Under way by the clock: 10:00 of day two is minute 2040, in the stop at km 200.
	if r := m.Report; r.Said[model.RoadTime] != "2026-06-13T10:00" || r.Said[model.RoadKm] != "200" {
		t.Fatalf("begins at %v", r.Said)
	}
	if !near(m.Cursor, m.Axis.AtKm(200).Min) {
		t.Errorf("the cursor is at %v", m.Cursor)
	}
	for _, e := range []model.Edited{{Field: model.RoadKm, Text: "210"}, {Field: model.RoadTime, Text: "2026-06-13T10:20"}, {Field: model.RoadKind + "diesel", Text: "quarters"}, {Field: model.RoadValue + "diesel", Text: "2"}, {Field: model.RoadKind + "fresh", Text: "percent"}, {Field: model.RoadValue + "fresh", Text: "80"}, {Field: model.RoadClosed + "n4", Text: "true"}} {
		m = then(m, e)
	}
	html := drawn(t, m)
	for _, want := range []string{"Old mill", "Diesel shows", "1/2", `id="f-road-closed-n4"`, "Plan from here"} {
		if !strings.Contains(html, want) {
			t.Errorf("the panel does not say %q", want)
		}
	}
	was := m.Wanted
	m = then(m, model.WentOn{})
	if m.Report != nil {
		t.Fatalf("refused: %v", m.Report.Wrong)
	}
	if m.Wanted != was+1 || m.Trip.Start != "2026-06-13" || !near(m.Trip.FromMin, 620) || !near(m.Trip.DoneKm, 210) || !slices.Equal(m.Trip.Avoid, []string{"n4"}) {
		t.Errorf("the rest: plan %d, %s at %v, %v km behind, without %v", m.Wanted, m.Trip.Start, m.Trip.FromMin, m.Trip.DoneKm, m.Trip.Avoid)
	}
	if len(m.News) < 4 || len(m.Trip.Done) != 3 {
		t.Errorf("told %q, %d stops behind, want two gauges and three stops", m.Say.Facts(m.News), len(m.Trip.Done))
	}
	plan := sample.Plan()
	plan.Done = m.Trip.Done
	m = then(m, model.Answered{No: m.Wanted, Plan: plan, Last: true})
	if html := drawn(t, m); !strings.Contains(html, `id="behind"`) || !strings.Contains(html, "drain grey water") {
		t.Error("what is behind is not shown")
	}
	if m = then(m, model.WentBack{}); m.Trip.Start != "2026-06-12" || m.News != nil || m.Report == nil || m.Report.Said[model.RoadValue+"fresh"] != "80" {
		t.Errorf("taken back it starts on %s, with %+v said", m.Trip.Start, m.Report)
	}
}

// madeOf is the stops of the report that were called at.
func madeOf(m model.Model) string {
	var out []string
	for _, v := range m.Report.Visits(m) {
		out = append(out, fmt.Sprintf("%s:%v", v.Call.Stop, v.Made))
	}
	return strings.Join(out, " ")
}

// Which stops were called at: what is said, else the ticks if there are any,
// else all that the clock leaves time for.
func TestWhichStopsWereCalledAt(t *testing.T) {
	at := func(m model.Model, now, km string) model.Model {
		return then(then(m, model.ReportToggled{Now: now}), model.Edited{Field: model.RoadKm, Text: km})
	}
	if got := madeOf(at(underWay(), "2026-06-13T10:20", "210")); got != "n1:true n2:true n3:true" {
		t.Errorf("nobody ticks: %s", got)
	}
	if got := madeOf(at(underWay(), "2026-06-12T18:00", "210")); got != "n1:true n2:false n3:true" {
		t.Errorf("on the first evening the night is not spent: %s", got)
	}
	m := then(underWay(), model.Ticked{Item: "stop/n1"})
	if html := drawn(t, m); strings.Count(html, `class="next"`) != 1 || !strings.Contains(html, `class="call made"`) {
		t.Error("neither what is done nor what is next is marked")
	}
	m = at(m, "2026-06-13T10:20", "210")
	if got := madeOf(m); got != "n1:true n2:false n3:false" {
		t.Errorf("one is ticked: %s", got)
	}
	m = then(m, model.Edited{Field: model.RoadMade + "n3", Text: "true"})
	if got := madeOf(m); got != "n1:true n2:false n3:true" {
		t.Errorf("one is ticked, one is said: %s", got)
	}
	m = then(m, model.WentOn{})
	if m.Report != nil || len(m.Trip.Done) != 2 || len(m.Ticks) != 0 {
		t.Fatalf("%+v: history %+v, ticks %q", m.Report, m.Trip.Done, m.Ticks)
	}
	if !strings.Contains(strings.Join(m.Say.Facts(m.News), " "), "You drove past Dune field without stopping") {
		t.Errorf("told %q", m.Say.Facts(m.News))
	}
	if m = then(m, model.WentBack{}); !slices.Equal(m.Ticks, []string{"stop/n1"}) || madeOf(m) != "n1:true n2:false n3:true" {
		t.Errorf("taken back: ticks %q, %s", m.Ticks, madeOf(m))
	}
	// Ticks of stops are of one trip; a reload is the same one.
	ticked := then(then(m, model.Ticked{Item: "set-off/gas"}), model.ReportToggled{})
	for _, c := range []struct {
		msg  model.Msg
		want string
	}{{model.TripRead{Trip: sample.Trip(), Last: &model.Resumed{}}, "set-off/gas stop/n1"}, {model.TripRead{Trip: sample.Trip()}, "set-off/gas"}, {model.RouteRead{Line: sample.Trip().Route}, "set-off/gas"}} {
		if got := strings.Join(then(ticked, c.msg).Ticks, " "); got != c.want {
			t.Errorf("%T: ticks %q, want %q", c.msg, got, c.want)
		}
	}
}

// What the device says is where somebody is; why it says nothing is told, and
// what was said before stays.
func TestTheDeviceSaysWhere(t *testing.T) {
	m := then(then(underWay(), model.ReportToggled{Now: "2026-06-13T10:20"}), model.HereAsked{})
	if !m.Report.Asking || !strings.Contains(drawn(t, m), said("onroad.asking")) {
		t.Error("that the device is asked is not said")
	}
	on, _ := model.Along(sample.Trip().Route, 0.5)
	m = then(m, model.HereFound{Point: on, WithinM: 20})
	km, _ := m.Report.Here(m)
	if m.Report.At == nil || *m.Report.At != on || m.Report.Asking || !strings.Contains(m.Say.Fact(m.Report.Device), "to within 20"+thin+"m.") {
		t.Fatalf("found: %+v", m.Report)
	}
	beside := orb.Point{on[0], on[1] + 0.05}
	if d := m.Say.Fact(then(m, model.HereFound{Point: beside, WithinM: 2000}).Report.Device); !strings.Contains(d, "to within 2"+thin+"km. The route is ") {
		t.Errorf("beside the route: %q", d)
	}
	m.Say.Units = "american"
	if d := m.Say.Fact(then(m, model.HereFound{Point: on, WithinM: 20}).Report.Device); !strings.Contains(d, "66"+thin+"ft") || !strings.Contains(d, "mile"+thin) {
		t.Errorf("in feet: %q", d)
	}
	m.Say.Units = ""
	for _, c := range []struct {
		msg  model.Msg
		want string
	}{
		{model.HereFound{Point: orb.Point{-70, 10}, WithinM: 20}, "more than 50" + thin + "km off your route"},
		{model.HereUnknown{Why: model.NotAllowed}, "may not know"},
		{model.HereUnknown{Why: model.TooLong}, "in time"},
		{model.HereUnknown{Why: model.NoPosition}, "does not know where it is"},
	} {
		got := then(m, c.msg)
		if still, _ := got.Report.Here(got); !strings.Contains(m.Say.Fact(got.Report.Lost), c.want) || still != km || !strings.Contains(drawn(t, got), `id="here-lost"`) {
			t.Errorf("%+v: %v, km %v", c.msg, got.Report.Lost, still)
		}
	}
	if late := then(then(m, model.ReportToggled{}), model.HereFound{Point: on, WithinM: 20}); late.Report != nil {
		t.Error("an answer after the panel was shut opens it")
	}
}

// underWay is the sample trip, its vehicle with the tanks that the plan has.
func underWay() model.Model {
	t := sample.Trip()
	var tanks []trip.Tank
	for _, k := range t.Vehicle.Tanks {
		if slices.ContainsFunc(sample.Plan().Strips, func(s trip.Strip) bool { return s.Tank == k.ID }) {
			k.Start = min(k.Start, k.Capacity)
			tanks = append(tanks, k)
		}
	}
	t.Vehicle.Tanks = tanks
	m := after(model.PlacesRead{File: model.File{Kind: "places"}}, model.TripRead{Trip: t})
	return then(m, model.Answered{No: m.Wanted, Plan: sample.Plan(), Last: true})
}

func near(a, b float64) bool { return math.Abs(a-b) < 1e-6 }
