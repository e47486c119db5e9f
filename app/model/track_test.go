package model

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/model/sample"
	"ullage/planner/byroad"
	"ullage/planner/fact"
)

// How a route came to be comes back with the trip of the last visit, and with no other.
func TestOriginRecalled(t *testing.T) {
	m := then(planned(), RouteRead{File{Name: "walk.gpx", Kind: "route"}, orb.LineString{pa, pb, pc}}, RoadsRead{Roads: 9})
	m = then(m, TrackMatched{m.Track, []byroad.Leg{{Line: orb.LineString{pa, bend, pc}, Avoided: []fact.Fact{fact.Of(byroad.RoadBarred, nil)}}}})
	b, err := json.Marshal(OriginOf(m))
	if err != nil {
		t.Fatal(err)
	}
	var kept KeptOrigin
	if err := json.Unmarshal(b, &kept); err != nil || !reflect.DeepEqual(kept, OriginOf(m)) {
		t.Fatalf("kept %s, %v", b, err)
	}
	visit := func(route orb.LineString) Model {
		tr := m.Trip
		tr.Route = route
		return then(planned(), TripRead{File{Kind: "trip"}, tr, &Resumed{Origin: kept}})
	}
	if again := visit(m.Trip.Route.Clone()); !reflect.DeepEqual(OriginOf(again), OriginOf(m)) {
		t.Errorf("after a reload %+v, want %+v", OriginOf(again), OriginOf(m))
	}
	for _, route := range []orb.LineString{{pa, bend, pb}, {pb, bend, pc}, {pa, pc}} {
		if other := visit(route); other.Track != nil {
			t.Errorf("another route, %v, is said to come from %+v", route, OriginOf(other))
		}
	}
	for _, route := range []orb.LineString{nil, {pb}} {
		lost := New(nil)
		lost.Trip.Route = route
		if o := OriginOf(lost); o.Count != len(route) || (o.Ends[1] == pb) != (len(route) > 0) {
			t.Errorf("of route %v is kept %+v", route, o)
		}
	}
	if none := then(planned(), TripRead{Trip: sample.Trip(), Last: &Resumed{}}); none.Track != nil || none.Matched {
		t.Errorf("nothing kept gives %+v", OriginOf(none))
	}
}

// A route is the one of the last visit if it begins and ends there, to the digits
// that a trip file keeps.
func TestSameSpot(t *testing.T) {
	for _, tc := range []struct {
		b    orb.Point
		want bool
	}{
		{orb.Point{7, 50}, true}, {orb.Point{7.000004, 49.999996}, true}, {orb.Point{7.00002, 50}, false}, {orb.Point{6.99998, 50}, false},
		{orb.Point{7, 50.00002}, false}, {orb.Point{7, 49.99998}, false}, {orb.Point{50, 7}, false}, {orb.Point{7.00002, 50.00002}, false},
	} {
		if got := sameSpot(orb.Point{7, 50}, tc.b); got != tc.want {
			t.Errorf("7, 50 and %v are the same: %v", tc.b, got)
		}
	}
}

// A file's track is put on roads and back. What is closed on it and has no way
// round is said until it is tried again; an answer for another line is too late.
func TestTrackOnRoads(t *testing.T) {
	track := orb.LineString{pa, pb, pc}
	m := then(planned(), RouteRead{File{Name: "walk.gpx", Kind: "route"}, track}, RoadsRead{Roads: 9})
	m.Trip.Keep = []string{"n1"}
	if got := then(m, TrackKept{}); got.Wanted != m.Wanted {
		t.Error("a track that is not on roads is taken off them")
	}
	roads := []byroad.Leg{{Line: orb.LineString{pa, bend, pc}, Avoided: []fact.Fact{sample.Tag("Low Lane")}, Closed: []fact.Fact{sample.Tag("Narrow Street")}}}
	for _, late := range []TrackMatched{{track.Clone(), roads}, {track, nil}} {
		if got := then(m, late); got.Matched || got.Wanted != m.Wanted {
			t.Errorf("%+v is taken", late)
		}
	}
	on := then(m, TrackMatched{track, roads})
	if !on.Matched || len(on.Trip.Route) != 3 || on.Trip.Route[1] != bend || on.Trip.Keep != nil || on.Wanted != m.Wanted+1 || len(on.Trip.Round) != 1 {
		t.Errorf("on roads the route is %v round %q", on.Trip.Route, on.Trip.Round)
	}
	if got := on.Say.Fact(on.Trouble); !strings.Contains(got, "Narrow Street") {
		t.Errorf("what has no way round is said so: %q", got)
	}
	if again := then(on, TrackMatched{track, []byroad.Leg{{Line: roads[0].Line}}}); !again.Trouble.Nothing() {
		t.Errorf("there is a way round, and still %v", again.Trouble)
	}
	short := then(m, RouteRead{Line: track[:2]})
	short = then(short, TrackMatched{short.Track, roads})
	if got := todo[MatchTrack](short, RoundAsked{}); len(got) != 1 || len(got[0].Line) != 2 {
		t.Errorf("asked once more, what is put on roads is %v, not the track of two points", got)
	}
	if got := then(short, TrackKept{}); got.Matched || len(got.Trip.Route) != 2 {
		t.Errorf("a track of two points does not come back: %v", got.Trip.Route)
	}
	off := then(on, TrackKept{})
	if off.Matched || !off.Trip.Route.Equal(track) || off.Trip.Round != nil || off.Wanted != on.Wanted+1 {
		t.Errorf("off roads the route is %v round %q", off.Trip.Route, off.Trip.Round)
	}
	on.Track = track[:1] // a memory that lost some
	if got := then(on, TrackKept{}); len(got.Trip.Route) != 3 {
		t.Errorf("half a track takes the place of the route: %v", got.Trip.Route)
	}
}

// A way round is offered where the plan says that the route is barred, there are
// roads, and nothing is being drawn.
func TestBarred(t *testing.T) {
	m := then(planned(), RoadsRead{Roads: 9})
	barred := m
	barred.Plan.Cautions = append(barred.Plan.Cautions, fact.Of(byroad.RouteBarred, nil))
	for _, tc := range []struct {
		name string
		m    Model
		want bool
	}{
		{"open", m, false}, {"barred", barred, true}, {"no roads", then(barred, RoadsRead{}), false}, {"being drawn", then(barred, DrawBegan{}), false},
	} {
		if got := tc.m.Barred(); got != tc.want {
			t.Errorf("%s: a way round is offered: %v", tc.name, got)
		}
	}
}
