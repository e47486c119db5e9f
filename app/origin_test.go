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
)

// barredPlan is the sample plan with the caution of the roads.
func barredPlan(m model.Model) model.Model {
	it := sample.Plan()
	it.Cautions = append([]fact.Fact{{Kind: byroad.RouteBarred, Values: fact.V{"why": {}, "where": {}}}}, it.Cautions...)
	return then(m, model.Answered{No: m.Wanted, Plan: it, Last: true})
}

// A route that goes where the vehicle may not is offered a way round, from a file or a trip's own, once there are roads. What
// it goes round is said; where there is no way round, that is.
func TestLeadRound(t *testing.T) {
	for name, m := range map[string]model.Model{
		"a trip's own": planned(),
		"a file's":     then(planned(), model.RouteRead{File: model.File{Name: "walk.gpx", Kind: "route"}, Line: orb.LineString{pa, pb, pc}}),
	} {
		if m = barredPlan(m); strings.Contains(drawn(t, m), `id="offer"`) {
			t.Errorf("%s: a way round is offered before there are roads", name)
		}
		m = barredPlan(then(m, model.RoadsRead{Roads: 9}))
		if html := drawn(t, m); !strings.Contains(html, said("track.lead_round")) {
			t.Errorf("%s: no way round is offered", name)
		}
		line := m.Trip.Route
		m = then(m, model.TrackMatched{Track: line, Legs: []byroad.Leg{{Line: orb.LineString{pa, bend, pc}, Avoided: []fact.Fact{lowLane}}}})
		m = then(m, model.Answered{No: m.Wanted, Plan: sample.Plan(), Last: true})
		html := drawn(t, m)
		if !m.Trip.Route.Equal(orb.LineString{pa, bend, pc}) || !slices.Equal(m.Trip.Round, []string{m.Say.Fact(lowLane)}) || strings.Contains(html, `id="offer"`) {
			t.Errorf("%s: led by %v, round %q", name, m.Trip.Route, m.Trip.Round)
		}
		if as := then(m, model.TrackKept{}); !as.Trip.Route.Equal(line) || as.Trip.Round != nil {
			t.Errorf("%s: taken back %v, round %q", name, as.Trip.Route, as.Trip.Round)
		}
		if other := otherVehicle(t, m); other.Trip.Round != nil {
			t.Errorf("%s: another vehicle goes round %q", name, other.Trip.Round)
		}
		stuck := then(m, model.TrackMatched{Track: line, Legs: []byroad.Leg{{Line: line, Closed: []fact.Fact{lowLane}}}})
		if !strings.Contains(drawn(t, stuck), "No way round is known for this vehicle: "+m.Say.Fact(lowLane)) {
			t.Errorf("%s: the page does not say that there is no way round", name)
		}
		late := then(m, model.TrackMatched{Track: orb.LineString{pb, pc}, Legs: []byroad.Leg{{Line: orb.LineString{pb, pc}}}})
		if !late.Trip.Route.Equal(m.Trip.Route) {
			t.Errorf("%s: an answer about another route changes this one", name)
		}
	}
}

// lowLane is a road that is too low.
var lowLane = fact.Of(byroad.RoadBarred, fact.V{"road": fact.Text("Low Lane"), "why": fact.Clause(fact.Of("road.bar.too_high", fact.V{"limit": fact.Metres(2.7, 2), "has": fact.Metres(3.05, 2)}))})
