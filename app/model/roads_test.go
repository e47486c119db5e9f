package model

import (
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/model/sample"
	"ullage/planner/byroad"
	"ullage/planner/fact"
)

// Map data may have roads or none, or their roads may not be read: the page
// says which, and plans anew only where ways change.
func TestRoads(t *testing.T) {
	for _, tc := range []struct {
		msg   Msg
		state RoadState
		plans int
	}{
		{RoadsReading{0.5}, RoadsComing, 0},
		{RoadsRead{Roads: 1, Notes: []fact.Fact{sample.Tag("left out")}}, RoadsReady, 1},
		{RoadsRead{}, RoadsNone, 0},
		{RoadsFailed{"torn"}, RoadsBroken, 0},
	} {
		m := planned()
		got := then(m, tc.msg)
		if got.Roads.State != tc.state || got.Wanted != m.Wanted+tc.plans {
			t.Errorf("%T%+v: %+v and %d plans", tc.msg, tc.msg, got.Roads, got.Wanted-m.Wanted)
		}
		if r := got.Roads; (r.Why != "") != (tc.state == RoadsBroken) || (len(r.Notes) > 0) != (tc.state == RoadsReady) || (r.Share > 0) != (tc.state == RoadsComing) {
			t.Errorf("%T%+v says %+v", tc.msg, tc.msg, r)
		}
	}
}

// A plan by estimates is not kept while roads are read: a better one follows.
func TestPlanByEstimatesIsNotKept(t *testing.T) {
	m := then(planned(), Afresh{}, RoadsReading{0.5})
	if m = then(m, Answered{No: m.Wanted, Plan: sample.Plan(), Last: true}); m.Trip.Keep != nil {
		t.Errorf("keeps %q", m.Trip.Keep)
	}
}

// Legs hold for the roads and the vehicle that they were found for; so do other
// ways and what the route goes round.
func TestLegsAreForgotten(t *testing.T) {
	m := drawn(orb.LineString{pa, pb}, WaysAsked{})
	m = then(m, Followed{SizeOf(m.Trip.Vehicle), []Pair{{pa, pb}}, []byroad.Leg{{Line: orb.LineString{pa, bend, pb}}}})
	m.Trip.Round = []string{"Low Lane"}
	for _, tc := range []struct {
		msg    Msg
		forget bool
	}{
		{RoadsRead{Roads: 9}, true},
		{Edited{"vehicle", m.Fleet[0].ID}, true},
		{Edited{"adults", "3"}, false},
		{Followed{Size{}, []Pair{{pb, pc}}, make([]byroad.Leg, 1)}, false},
	} {
		got := then(m, tc.msg)
		if (got.Legs == nil) != tc.forget || (got.Draft.Ways == nil) != tc.forget || !tc.forget && len(got.Legs) != 1 {
			t.Errorf("%T%+v leaves legs %v and ways %v", tc.msg, tc.msg, got.Legs, got.Draft.Ways)
		}
		if _, edited := tc.msg.(Edited); edited && (got.Trip.Round == nil) != tc.forget {
			t.Errorf("%+v leaves a route round %v", tc.msg, got.Trip.Round)
		}
	}
	if len(m.Legs) != 1 || m.Draft.Ways == nil {
		t.Error("the model before has forgotten them too")
	}
}
