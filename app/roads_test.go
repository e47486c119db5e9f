package page

import (
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/job"
	"ullage/planner/byroad"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// update applies messages in order.
func update(m Model, msgs ...Msg) Model {
	for _, msg := range msgs {
		m = Update(m, msg)
	}
	return m
}

var (
	pa, pb, pc = orb.Point{1, 1}, orb.Point{2, 1}, orb.Point{3, 2}
	bend       = orb.Point{1.5, 1.4}
)

// otherVehicle chooses a vehicle of another size.
func otherVehicle(t *testing.T, m Model) Model {
	t.Helper()
	other := update(m, Edited{"vehicle", trip.Fleet()[0].ID})
	if sizeOf(other.Trip.Vehicle) == sizeOf(m.Trip.Vehicle) {
		t.Fatalf("the vehicle is still %+v", other.Trip.Vehicle)
	}
	return other
}

// A drawn route is made of legs by road, and of straight ones where none is
// known; what it goes round is said with the trip.
func TestDrawingByRoad(t *testing.T) {
	m := update(planned(), RoadsRead{job.RoadsRead{Roads: 9}}, DrawBegan{}, DrawnPoint{pa}, DrawnPoint{pb}, DrawnPoint{pc})
	if got := m.Legs.unknown(m.Draft.Points); len(got) != 2 {
		t.Fatalf("%d legs are to be asked for, want 2", len(got))
	}
	m = update(m, Followed{sizeOf(m.Trip.Vehicle), []pair{{pa, pb}}, []byroad.Leg{{Line: orb.LineString{pa, bend, pb}, M: 9000, S: 600, Avoided: []fact.Fact{lowLane}}}})
	html := drawn(t, m)
	for _, want := range []string{"3 points", "does not go by " + m.Say.Fact(lowLane), "no road is known there"} {
		if !strings.Contains(html, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	text := draftData(*m.Draft, m.Legs.of(m.Draft.Points))
	for _, want := range []string{`"index":0,"off":false`, `[1.500000,1.400000]`, `"index":1,"off":true`} {
		if !strings.Contains(text, want) {
			t.Errorf("the map is given %s, want %s", text, want)
		}
	}
	used := update(m, DrawEnded{Keep: true})
	if got := used.Trip.Route; !got.Equal(orb.LineString{pa, bend, pb, pc}) {
		t.Errorf("route %v, want along the road and straight on", got)
	}
	if !slices.Equal(used.Trip.Round, []string{m.Say.Fact(lowLane)}) {
		t.Errorf("the trip's route goes round %q", used.Trip.Round)
	}
	if round := update(used, TrackMatched{used.Trip.Route, []byroad.Leg{{Line: orb.LineString{pa, bend, pc}}}}); !round.Trip.Points.Equal(orb.LineString{pa, pb, pc}) {
		t.Errorf("put on roads, the route is drawn on from %v, want the points of before", round.Trip.Points)
	}
	again := update(planned(), TripRead{File{Kind: "trip"}, used.Trip, false}, DrawBegan{}) // as after a reload, or on another device
	if !again.Draft.Points.Equal(orb.LineString{pa, pb, pc}) {
		t.Errorf("drawn on from %v, want the points of before", again.Draft.Points)
	}
	if other := otherVehicle(t, m); other.Legs != nil {
		t.Error("another vehicle follows the roads of the one before")
	}
}

// Every step is taken back and made again; the legs need not be asked for twice.
func TestDrawingSteps(t *testing.T) {
	m := update(planned(), DrawBegan{}, DrawnPoint{pa}, DrawnPoint{pc}, DrawnInsert{1, pb})
	if !m.Draft.Points.Equal(orb.LineString{pa, pb, pc}) {
		t.Fatalf("inserted: %v", m.Draft.Points)
	}
	m = update(m, DrawnChoice{1})
	if m.Draft.Chosen != 2 || !strings.Contains(drawn(t, m), "Remove point 2") {
		t.Errorf("chosen: %d", m.Draft.Chosen)
	}
	m = update(m, DrawnRemove{})
	if !m.Draft.Points.Equal(orb.LineString{pa, pc}) || m.Draft.Chosen != 0 {
		t.Errorf("removed: %v", m.Draft.Points)
	}
	m = update(m, DrawUndone{}, DrawUndone{}, DrawUndone{}, DrawUndone{}, DrawUndone{})
	if len(m.Draft.Points) != 0 || len(m.Draft.After) != 4 {
		t.Errorf("all undone: %v, %d to redo", m.Draft.Points, len(m.Draft.After))
	}
	m = update(m, DrawRedone{}, DrawRedone{}, DrawRedone{}, DrawRedone{}, DrawRedone{})
	if !m.Draft.Points.Equal(orb.LineString{pa, pc}) {
		t.Errorf("all redone: %v", m.Draft.Points)
	}
	if m = update(m, DrawUndone{}, DrawnPoint{pb}); len(m.Draft.After) != 0 {
		t.Error("a new step leaves something to redo")
	}
	for _, msg := range []Msg{DrawnInsert{9, pa}, DrawnMove{-1, pa}, DrawnChoice{7}, DrawnRemove{}} {
		if got := update(m, msg); !got.Draft.Points.Equal(m.Draft.Points) {
			t.Errorf("%T changes %v to %v", msg, m.Draft.Points, got.Draft.Points)
		}
	}
}

// A track is put on roads and taken off again; a trip's own route is not offered.
func TestTrackByChoice(t *testing.T) {
	track := orb.LineString{pa, pb, pc}
	m := update(planned(), RouteRead{File{Name: "walk.gpx", Kind: "route"}, track})
	if strings.Contains(drawn(t, m), `id="track"`) {
		t.Error("roads are offered before there are any")
	}
	m = update(m, RoadsRead{job.RoadsRead{Roads: 9}})
	if !strings.Contains(drawn(t, m), word.track) {
		t.Error("roads are not offered")
	}
	wanted := m.Wanted
	m = update(m, TrackMatched{track, []byroad.Leg{{Line: orb.LineString{pa, bend, pb}}, {Line: orb.LineString{pb, pc}, Drawn: true}}})
	if !m.Trip.Route.Equal(orb.LineString{pa, bend, pb, pc}) || m.Wanted != wanted+1 || !strings.Contains(drawn(t, m), word.trackAsIs) {
		t.Errorf("on roads: %v", m.Trip.Route)
	}
	if m = update(m, TrackKept{}); !m.Trip.Route.Equal(track) {
		t.Errorf("as in its file: %v", m.Trip.Route)
	}
}

// Roads that come plan the trip again; until then the plan by estimates is
// not the one in use.
func TestRoadsCome(t *testing.T) {
	m := update(planned(), RoadsReading{0.4})
	if !strings.Contains(drawn(t, m), "Reading roads, 40 %") {
		t.Error("the page does not say that it reads roads")
	}
	m.Trip.Keep = nil
	m = ask(m)
	if m = update(m, Answered{m.Wanted, samplePlan(), true}); m.Trip.Keep != nil {
		t.Error("a plan by estimates is in use, though a better one is on its way")
	}
	wanted := m.Wanted
	if m = update(m, RoadsRead{job.RoadsRead{Roads: 9}}); m.Wanted != wanted+1 || !strings.Contains(drawn(t, m), word.roadsReady) {
		t.Error("no plan by road is asked for")
	}
	if none := update(m, RoadsRead{}); none.Wanted != m.Wanted || !strings.Contains(drawn(t, none), word.roadsNone) {
		t.Error("files without roads are not said to be so")
	}
	if bad := update(m, RoadsFailed{"too many roads"}); !strings.Contains(drawn(t, bad), "too many roads") {
		t.Error("the page does not say why there are no roads")
	}
}

func TestBetween(t *testing.T) {
	line := orb.LineString{{0, 0}, {0, 1}, {0, 2}, {0, 4}}
	for _, tc := range []struct {
		from, to float64
		want     orb.LineString
	}{
		{0.125, 0.75, orb.LineString{{0, 0.5}, {0, 1}, {0, 2}, {0, 3}}},
		{0, 1, line}, {0.5, 0.5, nil}, {0.6, 0.7, orb.LineString{{0, 2.4}, {0, 2.8}}},
	} {
		got := between(line, tc.from, tc.to)
		if len(got) != len(tc.want) {
			t.Errorf("%v to %v: %v, want %v", tc.from, tc.to, got, tc.want)
			continue
		}
		for i := range got {
			if !near(got[i][1], tc.want[i][1]) {
				t.Errorf("%v to %v: %v, want %v", tc.from, tc.to, got, tc.want)
			}
		}
	}
}

// Other ways of the last leg, or of the one to the point that is chosen, are
// asked for at a press; one is taken by a point on it, and taken back.
func TestOtherWays(t *testing.T) {
	straight := []byroad.Leg{{Line: orb.LineString{pa, pb}, M: 20_000, S: 1200}, {Line: orb.LineString{pb, pc}, M: 30_000, S: 1800}}
	m := update(planned(), RoadsRead{job.RoadsRead{Roads: 9}}, DrawBegan{}, DrawnPoint{pa}, DrawnPoint{pb})
	if html := drawn(t, m); strings.Contains(html, "Other ways") {
		t.Error("other ways are offered before any way is known")
	}
	m = update(m, Followed{sizeOf(m.Trip.Vehicle), []pair{{pa, pb}, {pb, pc}}, straight}, DrawnPoint{pc})
	if html := drawn(t, m); !strings.Contains(html, "Other ways, 2 to 3") {
		t.Error("other ways of the last leg are not offered")
	}
	m = update(m, DrawnChoice{0})
	if html := drawn(t, m); !strings.Contains(html, "Other ways, 1 to 2") {
		t.Error("other ways of the leg at the chosen point are not offered")
	}
	m = update(m, WaysAsked{})
	if w := m.Draft.Ways; w == nil || w.Pair != (pair{pa, pb}) || w.Known {
		t.Fatalf("asked: %+v", w)
	}
	if none := update(m, WaysFound{sizeOf(m.Trip.Vehicle), pair{pa, pb}, nil, true}); !strings.Contains(drawn(t, none), "No other way worth it is known from 1 to 2.") {
		t.Error("the page does not say that there is none")
	}
	if failed := update(m, WaysFound{sizeOf(m.Trip.Vehicle), pair{pa, pb}, nil, false}); failed.Draft.Ways != nil || !strings.Contains(drawn(t, failed), "Other ways, 1 to 2") {
		t.Error("what could not be asked cannot be asked again")
	}
	if other := update(m, WaysFound{sizeOf(m.Trip.Vehicle), pair{pb, pc}, straight, true}); other.Draft.Ways.Known {
		t.Error("the answer to another question is taken")
	}
	if moved := update(m, DrawnPoint{pc}, WaysFound{sizeOf(m.Trip.Vehicle), pair{pa, pb}, straight, true}); moved.Draft.Ways != nil {
		t.Error("an answer comes for points that are no more")
	}
	if other := update(m, WaysFound{size{}, pair{pa, pb}, straight, true}); other.Draft.Ways.Known {
		t.Error("ways of another vehicle are offered")
	}
	way := []byroad.Leg{{Line: orb.LineString{pa, bend}, M: 13_000, S: 900, By: "Hill Road"}, {Line: orb.LineString{bend, pb}, M: 12_000, S: 660}}
	m = update(m, WaysFound{sizeOf(m.Trip.Vehicle), pair{pa, pb}, append(way, way...), true})
	html := drawn(t, m)
	for _, want := range []string{"A: by Hill Road, +5\u202fkm, +6\u202fmin", "B: by Hill Road"} {
		if !strings.Contains(html, want) {
			t.Errorf("the page does not offer %q", want)
		}
	}
	if text := othersData(m.Draft); !strings.Contains(text, `"letter":"B"`) || !strings.Contains(text, "[1.5,1.4]") {
		t.Errorf("the map is given %s", text)
	}
	if none := update(m, WayTaken{2}, WayTaken{-1}); !none.Draft.Points.Equal(m.Draft.Points) {
		t.Error("a way that is not there is taken")
	}
	if other := otherVehicle(t, m); other.Draft.Ways != nil {
		t.Error("ways found for another vehicle are still offered")
	}
	m = update(m, WayTaken{0})
	if !m.Draft.Points.Equal(orb.LineString{pa, bend, pb, pc}) || m.Draft.Ways != nil || len(m.Legs.unknown(m.Draft.Points)) != 0 {
		t.Errorf("taken: %v, %d legs unknown", m.Draft.Points, len(m.Legs.unknown(m.Draft.Points)))
	}
	if line := joined(m.Legs.of(m.Draft.Points)); !line.Equal(orb.LineString{pa, bend, pb, pc}) {
		t.Errorf("the line is %v", line)
	}
	if back := update(m, DrawUndone{}); !back.Draft.Points.Equal(orb.LineString{pa, pb, pc}) {
		t.Errorf("taken back: %v", back.Draft.Points)
	}
	if text := othersData(m.Draft); strings.Contains(text, "letter") {
		t.Errorf("the map still shows %s", text)
	}
}
