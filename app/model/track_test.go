package model

import (
	"encoding/json"
	"reflect"
	"testing"

	"github.com/paulmach/orb"

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
		return then(planned(), TripRead{File{Kind: "trip"}, tr, true}, OriginRead{kept})
	}
	if again := visit(m.Trip.Route.Clone()); !reflect.DeepEqual(OriginOf(again), OriginOf(m)) {
		t.Errorf("after a reload %+v, want %+v", OriginOf(again), OriginOf(m))
	}
	if other := visit(orb.LineString{pa, bend, pb}); other.Track != nil {
		t.Errorf("another route is said to come from %+v", OriginOf(other))
	}
	if none := then(planned(), OriginRead{}); none.Track != nil || none.Matched {
		t.Errorf("nothing kept gives %+v", OriginOf(none))
	}
}
