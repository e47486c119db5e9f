package model

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/model/sample"
	"ullage/planner/trip"
	"ullage/planner/trip/onward"
)

// underWay is the sample trip, its vehicle with the tanks that the plan has.
func underWay() Model {
	t := sample.Trip()
	var tanks []trip.Tank
	for _, k := range t.Vehicle.Tanks {
		if slices.ContainsFunc(sample.Plan().Strips, func(s trip.Strip) bool { return s.Tank == k.ID }) {
			k.Start = min(k.Start, k.Capacity)
			tanks = append(tanks, k)
		}
	}
	t.Vehicle.Tanks = tanks
	m := after(PlacesRead{File: File{Kind: "places"}}, TripRead{Trip: t})
	return then(m, Answered{No: m.Wanted, Plan: sample.Plan(), Last: true})
}

func TestWhereSomebodyIs(t *testing.T) {
	m := then(underWay(), ReportToggled{"2031-01-01T10:00"}) // not on this trip: the plan's time counts
	m = then(m, Edited{RoadWhere, "3"})
	if r := m.Report; r.Said[RoadKm] != "200" || r.Said[RoadTime] != "2026-06-13T09:50" {
		t.Errorf("at stop 3: %v, want km 200 at the time planned, 2030 minutes", r.Said)
	}
	p := orb.Point{11.4, 50.25}
	m = then(m, ReportPointed{p, 237.4})
	if n, wrong := m.Report.now(m); !wrong.Nothing() || n.At == nil || *n.At != p || m.Report.Said[RoadKm] != "237.4" {
		t.Errorf("on the map: %v, %v", n, wrong)
	}
	m = then(m, Edited{RoadKm, "220"})
	if n, wrong := m.Report.now(m); !wrong.Nothing() || n.At != nil || !near(*n.Km, 220) {
		t.Errorf("typed after it: %v, %v", n, wrong)
	}
	for _, c := range []struct{ key, text, want string }{
		{RoadKm, "481", "before the end of the route"}, {RoadKm, "here", "Say where you are"}, {RoadTime, "soon", "2026-06-13T14:20"}, {RoadTime, "2026-06-01T10:00", "Monday 1 June is before your trip begins"},
	} {
		if got := then(then(m, Edited{c.key, c.text}), WentOn{}); got.Report == nil || !strings.Contains(m.Say.Fact(got.Report.Wrong), c.want) || got.Wanted != m.Wanted {
			t.Errorf("%s %q: %+v, want %q", c.key, c.text, got.Report, c.want)
		}
	}
	wrong := then(then(then(m, Edited{RoadKind + "grey", "percent"}), Edited{RoadValue + "grey", "120"}), WentOn{})
	if !strings.Contains(m.Say.Fact(wrong.Report.Wrong), "Grey water: A number from 0 to 100.") {
		t.Errorf("120 %%: %v", wrong.Report.Wrong)
	}
}

// What was called at is what somebody says; else the ticks, if there are any; else
// what the clock leaves time for.
func TestVisits(t *testing.T) {
	m := underWay()
	m.Plan.Days[0].Calls[0].Km = 0                 // at the very start: a place that cannot be read is not there
	m = then(m, ReportToggled{"2026-06-13T11:00"}) // 2100 minutes: stops 1, 2 and 3 are behind
	for _, tc := range []struct {
		name string
		msgs []Msg
		want string
	}{
		{"by the clock", nil, "n1 n2 n3"},
		{"before any night", []Msg{Edited{RoadTime, "2026-06-12T10:00"}}, "n1 (n2) n3"},
		{"nearer", []Msg{Edited{RoadKm, "100"}}, "n1"},
		{"ticked", []Msg{Ticked{"stop/n1"}, Ticked{"stop/n3"}}, "n1 (n2) n3"},
		{"said", []Msg{Ticked{"stop/n1"}, Edited{RoadMade + "n1", "false"}, Edited{RoadMade + "n2", "true"}}, "(n1) n2 (n3)"},
		{"nowhere", []Msg{Edited{RoadKm, "here"}}, ""},
		{"beyond the end", []Msg{Edited{RoadKm, "9999"}}, ""},
		{"at no time", []Msg{Edited{RoadTime, "soon"}}, ""},
	} {
		got := then(m, tc.msgs...)
		var said []string
		for _, v := range got.Report.Visits(got) {
			if !v.Made {
				v.Call.Stop = "(" + v.Call.Stop + ")"
			}
			said = append(said, v.Call.Stop)
		}
		if s := strings.Join(said, " "); s != tc.want {
			t.Errorf("%s: %q, want %q", tc.name, s, tc.want)
		}
	}
}

// What was said reaches the planner: where one called, what the gauges show and
// what is closed; a gauge of which nothing is known says nothing.
func TestNow(t *testing.T) {
	m := then(underWay(), ReportToggled{"2026-06-13T11:00"}, Edited{RoadMade + "n2", "false"}, Edited{RoadOther, "n9"},
		Edited{RoadKind + "diesel", "percent"}, Edited{RoadValue + "diesel", "40"}, Edited{RoadKind + "grey", "lamp"}, Edited{RoadValue + "fresh", "7"})
	n, wrong := m.Report.now(m)
	if !wrong.Nothing() || n.Time != "2026-06-13T11:00" || !slices.Equal(n.Closed, []string{"n9"}) {
		t.Errorf("now is %+v, %v", n, wrong)
	}
	if !maps.Equal(n.Called, map[string]bool{"n1": true, "n2": false, "n3": true}) {
		t.Errorf("called at %v", n.Called)
	}
	if !maps.Equal(n.Gauges, map[string]onward.Shown{"diesel": {Kind: "percent", Value: 40}}) {
		t.Errorf("gauges %v", n.Gauges)
	}
}

// From here a trip of its own goes on, from its beginning, with nothing of the
// trip before; taken back, all is as it was.
func TestOnAndBack(t *testing.T) {
	m := then(underWay(), Ticked{"set-off/gas"}, Ticked{"stop/n1"}, ReportToggled{"2026-06-13T11:00"}, Edited{RoadClosed + "n4", "true"})
	m.Origin = Origin{Track: m.Trip.Route, Matched: true}
	m.Typed = map[string]string{"adults": "many"}
	if m.Cursor == 0 {
		t.Fatal("the cursor does not tell") // it is where the clock is
	}
	on := then(m, WentOn{})
	if on.Report != nil || on.Typed != nil || on.Cursor != 0 || on.Track != nil || on.Matched || on.Before == nil {
		t.Errorf("going on: report %+v, typed %v, cursor %v, origin %+v", on.Report, on.Typed, on.Cursor, on.Origin)
	}
	if on.Wanted != m.Wanted+1 || on.Trip.Route[0] == m.Trip.Route[0] || !slices.Contains(on.Trip.Avoid, "n4") {
		t.Errorf("plan %d from %v, without %q", on.Wanted-m.Wanted, on.Trip.Route[0], on.Trip.Avoid)
	}
	if !slices.Equal(on.Ticks, []string{"set-off/gas"}) || len(todo[ShowRoad](m, WentOn{})) != 1 {
		t.Errorf("ticks %q, to do %v", on.Ticks, todo[Effect](m, WentOn{}))
	}
	taught := then(m, Edited{RoadKind + "diesel", "percent"}, Edited{RoadValue + "diesel", "40"}, WentOn{})
	if news := strings.Join(taught.Say.Facts(taught.News), "; "); !strings.Contains(news, "Diesel") {
		t.Errorf("what the gauge taught is %q", news)
	}
	back := then(on, WentBack{})
	if back.Trip.Start != m.Trip.Start || len(back.Trip.Route) != len(m.Trip.Route) || len(back.Ticks) != 2 || !back.Matched || !Same(back.Track, m.Track) {
		t.Errorf("back: trip from %s, ticks %q, origin %+v", back.Trip.Start, back.Ticks, back.Origin)
	}
	if back.Report == nil || back.Report.Said[RoadTime] != "2026-06-13T11:00" || back.Before != nil || back.Wanted != on.Wanted+1 {
		t.Errorf("back: report %+v", back.Report)
	}
	if got := then(back, WentBack{}); got.Wanted != back.Wanted {
		t.Error("what is taken back can be taken back once more")
	}
}
