package page

import (
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/model"
	"ullage/app/model/sample"
	"ullage/planner/byroad"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

var (
	pa, pb, pc = orb.Point{1, 1}, orb.Point{2, 1}, orb.Point{3, 2}
	bend       = orb.Point{1.5, 1.4}
)

// otherVehicle chooses a vehicle of another size.
func otherVehicle(t *testing.T, m model.Model) model.Model {
	t.Helper()
	other := then(m, model.Edited{Field: "vehicle", Text: trip.Fleet()[0].ID})
	if model.SizeOf(other.Trip.Vehicle) == model.SizeOf(m.Trip.Vehicle) {
		t.Fatalf("the vehicle is still %+v", other.Trip.Vehicle)
	}
	return other
}

// A drawn route is made of legs by road, and of straight ones where none is
// known; what it goes round is said with the trip.
func TestDrawingByRoad(t *testing.T) {
	m := then(planned(), model.RoadsRead{Roads: 9}, model.DrawBegan{}, model.DrawnPoint{Point: pa}, model.DrawnPoint{Point: pb}, model.DrawnPoint{Point: pc})
	if got := m.Legs.Unknown(m.Draft.Points); len(got) != 2 {
		t.Fatalf("%d legs are to be asked for, want 2", len(got))
	}
	m = then(m, model.Followed{Vehicle: model.SizeOf(m.Trip.Vehicle), Pairs: []model.Pair{{pa, pb}}, Legs: []byroad.Leg{{Line: orb.LineString{pa, bend, pb}, M: 9000, S: 600, Avoided: []fact.Fact{lowLane}}}})
	html := drawn(t, m)
	for _, want := range []string{"3 points", "Goes round " + m.Say.Fact(lowLane), "no road is known there"} {
		if !strings.Contains(html, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	used := then(m, model.DrawEnded{Keep: true})
	if got := used.Trip.Route; !got.Equal(orb.LineString{pa, bend, pb, pc}) {
		t.Errorf("route %v, want model.Along the road and straight on", got)
	}
	if !slices.Equal(used.Trip.Round, []string{m.Say.Fact(lowLane)}) {
		t.Errorf("the trip's route goes round %q", used.Trip.Round)
	}
	if round := then(used, model.TrackMatched{Track: used.Trip.Route, Legs: []byroad.Leg{{Line: orb.LineString{pa, bend, pc}}}}); !round.Trip.Points.Equal(orb.LineString{pa, pb, pc}) {
		t.Errorf("put on roads, the route is drawn on from %v, want the points of before", round.Trip.Points)
	}
	again := then(planned(), model.TripRead{File: model.File{Kind: "trip"}, Trip: used.Trip}, model.DrawBegan{}) // as after a reload, or on another device
	if !again.Draft.Points.Equal(orb.LineString{pa, pb, pc}) {
		t.Errorf("drawn on from %v, want the points of before", again.Draft.Points)
	}
	if other := otherVehicle(t, m); other.Legs != nil {
		t.Error("another vehicle follows the roads of the one before")
	}
}

// Every step is taken back and made again; the legs need not be asked for twice.
func TestDrawingSteps(t *testing.T) {
	m := then(planned(), model.DrawBegan{}, model.DrawnPoint{Point: pa}, model.DrawnPoint{Point: pc}, model.DrawnInsert{Index: 1, Point: pb})
	if !m.Draft.Points.Equal(orb.LineString{pa, pb, pc}) {
		t.Fatalf("inserted: %v", m.Draft.Points)
	}
	m = then(m, model.DrawnChoice{Index: 1})
	if m.Draft.Chosen != 2 || !strings.Contains(drawn(t, m), "Remove point 2") {
		t.Errorf("chosen: %d", m.Draft.Chosen)
	}
	m = then(m, model.DrawnRemove{})
	if !m.Draft.Points.Equal(orb.LineString{pa, pc}) || m.Draft.Chosen != 0 {
		t.Errorf("removed: %v", m.Draft.Points)
	}
	m = then(m, model.DrawUndone{}, model.DrawUndone{}, model.DrawUndone{}, model.DrawUndone{}, model.DrawUndone{})
	if len(m.Draft.Points) != 0 || len(m.Draft.After) != 4 {
		t.Errorf("all undone: %v, %d to redo", m.Draft.Points, len(m.Draft.After))
	}
	m = then(m, model.DrawRedone{}, model.DrawRedone{}, model.DrawRedone{}, model.DrawRedone{}, model.DrawRedone{})
	if !m.Draft.Points.Equal(orb.LineString{pa, pc}) {
		t.Errorf("all redone: %v", m.Draft.Points)
	}
	if m = then(m, model.DrawUndone{}, model.DrawnPoint{Point: pb}); len(m.Draft.After) != 0 {
		t.Error("a new step leaves something to redo")
	}
	for _, msg := range []model.Msg{model.DrawnInsert{Index: 9, Point: pa}, model.DrawnMove{Index: -1, Point: pa}, model.DrawnChoice{Index: 7}, model.DrawnRemove{}} {
		if got := then(m, msg); !got.Draft.Points.Equal(m.Draft.Points) {
			t.Errorf("%T changes %v to %v", msg, m.Draft.Points, got.Draft.Points)
		}
	}
}

// A track is put on roads and taken off again; a trip's own route is not offered.
func TestTrackByChoice(t *testing.T) {
	track := orb.LineString{pa, pb, pc}
	m := then(planned(), model.RouteRead{File: model.File{Name: "walk.gpx", Kind: "route"}, Line: track})
	if strings.Contains(drawn(t, m), `id="track"`) {
		t.Error("roads are offered before there are any")
	}
	m = then(m, model.RoadsRead{Roads: 9})
	if !strings.Contains(drawn(t, m), said("track.match")) {
		t.Error("roads are not offered")
	}
	wanted := m.Wanted
	m = then(m, model.TrackMatched{Track: track, Legs: []byroad.Leg{{Line: orb.LineString{pa, bend, pb}}, {Line: orb.LineString{pb, pc}, Drawn: true}}})
	if !m.Trip.Route.Equal(orb.LineString{pa, bend, pb, pc}) || m.Wanted != wanted+1 || !strings.Contains(drawn(t, m), said("track.as_is")) {
		t.Errorf("on roads: %v", m.Trip.Route)
	}
	if m = then(m, model.TrackKept{}); !m.Trip.Route.Equal(track) {
		t.Errorf("as in its file: %v", m.Trip.Route)
	}
}

// Roads that come plan the trip again; until then the plan by estimates is
// not the one in use.
func TestRoadsCome(t *testing.T) {
	m := then(planned(), model.RoadsReading{Share: 0.4})
	if !strings.Contains(drawn(t, m), "Reading roads, 40\u202f%") {
		t.Error("the page does not say that it reads roads")
	}
	m.Trip.Keep = nil
	m = then(m, model.Afresh{})
	if m = then(m, model.Answered{No: m.Wanted, Plan: sample.Plan(), Last: true}); m.Trip.Keep != nil {
		t.Error("a plan by estimates is in use, though a better one is on its way")
	}
	wanted := m.Wanted
	if m = then(m, model.RoadsRead{Roads: 9}); m.Wanted != wanted+1 || !strings.Contains(drawn(t, m), said("roads.ready")) {
		t.Error("no plan by road is asked for")
	}
	if none := then(m, model.RoadsRead{}); none.Wanted != m.Wanted || !strings.Contains(drawn(t, none), said("roads.none")) {
		t.Error("files without roads are not said to be so")
	}
	if bad := then(m, model.RoadsFailed{Why: "too many roads"}); !strings.Contains(drawn(t, bad), "too many roads") {
		t.Error("the page does not say why there are no roads")
	}
}

// Other ways of the last leg, or of the one to the point that is chosen, are
// asked for at a press; one is taken by a point on it, and taken back.
func TestOtherWays(t *testing.T) {
	straight := []byroad.Leg{{Line: orb.LineString{pa, pb}, M: 20_000, S: 1200}, {Line: orb.LineString{pb, pc}, M: 30_000, S: 1800}}
	m := then(planned(), model.RoadsRead{Roads: 9}, model.DrawBegan{}, model.DrawnPoint{Point: pa}, model.DrawnPoint{Point: pb})
	if html := drawn(t, m); strings.Contains(html, "Other ways from") {
		t.Error("other ways are offered before any way is known")
	}
	m = then(m, model.Followed{Vehicle: model.SizeOf(m.Trip.Vehicle), Pairs: []model.Pair{{pa, pb}, {pb, pc}}, Legs: straight}, model.DrawnPoint{Point: pc})
	if html := drawn(t, m); !strings.Contains(html, "Other ways from point 2 to 3") {
		t.Error("other ways of the last leg are not offered")
	}
	m = then(m, model.DrawnChoice{Index: 0})
	if html := drawn(t, m); !strings.Contains(html, "Other ways from point 1 to 2") {
		t.Error("other ways of the leg at the chosen point are not offered")
	}
	m = then(m, model.WaysAsked{})
	if w := m.Draft.Ways; w == nil || w.Pair != (model.Pair{pa, pb}) || w.Known {
		t.Fatalf("asked: %+v", w)
	}
	if none := then(m, model.WaysFound{Vehicle: model.SizeOf(m.Trip.Vehicle), Pair: model.Pair{pa, pb}, Legs: nil, OK: true}); !strings.Contains(drawn(t, none), "No other way from point 1 to 2 is worth it.") {
		t.Error("the page does not say that there is none")
	}
	if failed := then(m, model.WaysFound{Vehicle: model.SizeOf(m.Trip.Vehicle), Pair: model.Pair{pa, pb}, Legs: nil, OK: false}); failed.Draft.Ways != nil || !strings.Contains(drawn(t, failed), "Other ways from point 1 to 2") {
		t.Error("what could not be asked cannot be asked again")
	}
	if other := then(m, model.WaysFound{Vehicle: model.SizeOf(m.Trip.Vehicle), Pair: model.Pair{pb, pc}, Legs: straight, OK: true}); other.Draft.Ways.Known {
		t.Error("the answer to another question is taken")
	}
	if moved := then(m, model.DrawnPoint{Point: pc}, model.WaysFound{Vehicle: model.SizeOf(m.Trip.Vehicle), Pair: model.Pair{pa, pb}, Legs: straight, OK: true}); moved.Draft.Ways != nil {
		t.Error("an answer comes for points that are no more")
	}
	if other := then(m, model.WaysFound{Vehicle: model.Size{}, Pair: model.Pair{pa, pb}, Legs: straight, OK: true}); other.Draft.Ways.Known {
		t.Error("ways of another vehicle are offered")
	}
	way := []byroad.Leg{{Line: orb.LineString{pa, bend}, M: 13_000, S: 900, By: "Hill Road"}, {Line: orb.LineString{bend, pb}, M: 12_000, S: 660}}
	m = then(m, model.WaysFound{Vehicle: model.SizeOf(m.Trip.Vehicle), Pair: model.Pair{pa, pb}, Legs: append(way, way...), OK: true})
	html := drawn(t, m)
	for _, want := range []string{"A: by Hill Road, +5\u202fkm, +6\u202fmin", "B: by Hill Road"} {
		if !strings.Contains(html, want) {
			t.Errorf("the page does not offer %q", want)
		}
	}
	if none := then(m, model.WayTaken{Index: 2}, model.WayTaken{Index: -1}); !none.Draft.Points.Equal(m.Draft.Points) {
		t.Error("a way that is not there is taken")
	}
	if other := otherVehicle(t, m); other.Draft.Ways != nil {
		t.Error("ways found for another vehicle are still offered")
	}
	m = then(m, model.WayTaken{Index: 0})
	if !m.Draft.Points.Equal(orb.LineString{pa, bend, pb, pc}) || m.Draft.Ways != nil || len(m.Legs.Unknown(m.Draft.Points)) != 0 {
		t.Errorf("taken: %v, %d legs unknown", m.Draft.Points, len(m.Legs.Unknown(m.Draft.Points)))
	}
	if line := model.Joined(m.Legs.Of(m.Draft.Points)); !line.Equal(orb.LineString{pa, bend, pb, pc}) {
		t.Errorf("the line is %v", line)
	}
	if back := then(m, model.DrawUndone{}); !back.Draft.Points.Equal(orb.LineString{pa, pb, pc}) {
		t.Errorf("taken back: %v", back.Draft.Points)
	}
}
