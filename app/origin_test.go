package page

import (
	"encoding/json"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/job"
	"ullage/planner/byroad"
	"ullage/planner/fact"
)

// barredPlan is the sample plan with the caution of the roads.
func barredPlan(m Model) Model {
	it := samplePlan()
	it.Cautions = append([]string{byroad.Barred + ": height limit 2.70 m, the vehicle has 3.05 m: km 3.0. Change the route there."}, it.Cautions...)
	return update(m, Answered{m.Wanted, it, true})
}

// A route that goes where the vehicle may not is offered a way round, from a file or a trip's own, once there are roads. What
// it goes round is said; where there is no way round, that is.
func TestLeadRound(t *testing.T) {
	for name, m := range map[string]Model{
		"a trip's own": planned(),
		"a file's":     update(planned(), RouteRead{File{Name: "walk.gpx", Kind: "route"}, orb.LineString{pa, pb, pc}}),
	} {
		if m = barredPlan(m); strings.Contains(drawn(t, m), `id="offer"`) {
			t.Errorf("%s: a way round is offered before there are roads", name)
		}
		m = barredPlan(update(m, RoadsRead{job.RoadsRead{Roads: 9}}))
		if html := drawn(t, m); !strings.Contains(html, word.leadRound) {
			t.Errorf("%s: no way round is offered", name)
		}
		line := unmatched(m)
		m = update(m, TrackMatched{line, []byroad.Leg{{Line: orb.LineString{pa, bend, pc}, Avoided: []fact.Fact{lowLane}}}})
		m = update(m, Answered{m.Wanted, samplePlan(), true})
		html := drawn(t, m)
		if !m.Trip.Route.Equal(orb.LineString{pa, bend, pc}) || !slices.Equal(m.Trip.Round, []string{m.Say.Fact(lowLane)}) || strings.Contains(html, `id="offer"`) {
			t.Errorf("%s: led by %v, round %q", name, m.Trip.Route, m.Trip.Round)
		}
		if as := update(m, TrackKept{}); !as.Trip.Route.Equal(line) || as.Trip.Round != nil {
			t.Errorf("%s: taken back %v, round %q", name, as.Trip.Route, as.Trip.Round)
		}
		if other := otherVehicle(t, m); other.Trip.Round != nil {
			t.Errorf("%s: another vehicle goes round %q", name, other.Trip.Round)
		}
		stuck := update(m, TrackMatched{line, []byroad.Leg{{Line: line, Closed: []fact.Fact{lowLane}}}})
		if !strings.Contains(drawn(t, stuck), "No way round is known for this vehicle: "+m.Say.Fact(lowLane)) {
			t.Errorf("%s: the page does not say that there is no way round", name)
		}
		late := update(m, TrackMatched{orb.LineString{pb, pc}, []byroad.Leg{{Line: orb.LineString{pb, pc}}}})
		if !late.Trip.Route.Equal(m.Trip.Route) {
			t.Errorf("%s: an answer about another route changes this one", name)
		}
	}
}

// How a route came to be comes back with the trip of the last visit, and with no other.
func TestOriginRecalled(t *testing.T) {
	m := update(planned(), RouteRead{File{Name: "walk.gpx", Kind: "route"}, orb.LineString{pa, pb, pc}}, RoadsRead{job.RoadsRead{Roads: 9}})
	m = update(m, TrackMatched{m.Track, []byroad.Leg{{Line: orb.LineString{pa, bend, pc}, Avoided: []fact.Fact{lowLane}}}})
	b, err := json.Marshal(originOf(m))
	if err != nil {
		t.Fatal(err)
	}
	var kept Origin
	if err := json.Unmarshal(b, &kept); err != nil || !reflect.DeepEqual(kept, originOf(m)) {
		t.Fatalf("kept %s, %v", b, err)
	}
	visit := func(route orb.LineString) Model {
		tr := m.Trip
		tr.Route = route
		return update(planned(), TripRead{File{Kind: "trip"}, tr, true}, OriginRead{kept})
	}
	if again := visit(m.Trip.Route.Clone()); !reflect.DeepEqual(originOf(again), originOf(m)) {
		t.Errorf("after a reload %+v, want %+v", originOf(again), originOf(m))
	}
	if other := visit(orb.LineString{pa, bend, pb}); other.Track != nil {
		t.Errorf("another route is said to come from %+v", originOf(other))
	}
	if none := update(planned(), OriginRead{}); none.Track != nil || none.Matched {
		t.Errorf("nothing kept gives %+v", originOf(none))
	}
}

// lowLane is a road that is too low.
var lowLane = fact.Of(byroad.RoadBarred, fact.V{"road": fact.Text("Low Lane"), "why": fact.Clause(fact.Of("road.bar.too_high", fact.V{"limit": fact.Metres(2.7, 2), "has": fact.Metres(3.05, 2)}))})
