package mapview

import (
	"math"
	"strings"

	"github.com/paulmach/orb"

	"ullage/app/draw"
	"ullage/app/model"
	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// A MapModel is what the map shows.
type MapModel struct {
	Say      say.Voice
	Route    orb.LineString
	Plan     trip.Itinerary
	Ground   string // backdrop as GeoJSON
	Backdrop draw.Backdrop
	Cursor   orb.Point // where the vehicle is at the moment shown
	HasPoint bool
	Draft    *model.Draft
	Legs     model.Legs
	Vehicle  model.Size
	OSM      bool       // the attribution is due
	Road     bool       // a click says where somebody is
	Overall  [4]float64 // west, south, east, north of the whole; zeros: nothing is known
	Answered bool       // there is a plan, or a refusal
	Far      bool       // the route is not where the map data are
}

// Of is what the map shows of a model.
func Of(m model.Model) MapModel {
	out := MapModel{
		Say: m.Say, Route: m.Trip.Route, Plan: m.Plan, Ground: m.Ground, Backdrop: m.Backdrop, Draft: m.Draft, Legs: m.Legs,
		Vehicle: model.SizeOf(m.Trip.Vehicle), OSM: model.Attributed(m.Files), Road: m.Report != nil, Answered: m.Shown > 0, Far: m.Elsewhere(),
	}
	out.Overall, _ = m.Overall()
	if m.HasPlan() {
		out.Cursor, out.HasPoint = model.Along(m.Trip.Route, m.Axis.AtMin(m.Cursor).Km/math.Max(m.Plan.LengthKm, 1e-9))
	}
	return out
}

// describe says what a candidate is, in a line.
func describe(v say.Voice, c trip.Candidate, names map[string]string) string {
	parts := []string{say.Capital(v.Place(string(c.Kind)))}
	if c.Name != "" {
		parts = []string{c.Name, v.Place(string(c.Kind))}
	}
	var tanks []string
	for _, t := range c.Tanks {
		tanks = append(tanks, v.Tank(t, names[t]))
	}
	if len(tanks) > 0 {
		parts = append(parts, strings.Join(tanks, ", "))
	}
	if c.Night {
		parts = append(parts, show.Nights(v, 1))
	}
	off := v.Text("stop.on_route")
	if c.OffKm >= trip.BesideKm {
		off = v.Text("map.off", fact.V{"km": fact.Km(c.OffKm, -1)})
	}
	parts = append(parts, v.Mark(c.Km, -1), off)
	if c.Excluded != nil {
		parts = append(parts, v.Text("map.unused", fact.V{"why": fact.Clause(*c.Excluded)}))
	}
	return strings.Join(parts, " · ")
}

// cursorData has the place of the moment looked at.
func cursorData(m MapModel) string {
	if !m.HasPoint {
		return collection()
	}
	return collection(pointFeature(m.Cursor, nil))
}
