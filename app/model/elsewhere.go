package model

import (
	"cmp"
	"math"
	"slices"

	"github.com/paulmach/orb"

	"ullage/app/draw"
	"ullage/planner/fact"
)

// This file is about where the map data are: what the map shows before there
// is a route in them, and what a route drawn there is called.

// mapBox is around the places of all files; ok is false if there are none.
func mapBox(files []File) (box orb.Bound, ok bool) {
	for _, f := range files {
		if f.Kind != "places" || f.Count == 0 {
			continue
		}
		if b := (orb.Bound{Min: orb.Point{f.Box[0], f.Box[1]}, Max: orb.Point{f.Box[2], f.Box[3]}}); ok {
			box = box.Union(b)
		} else {
			box, ok = b, true
		}
	}
	return box, ok
}

// farDegrees is a little more than the widest corridor of 50 km, as latitude.
const farDegrees = 0.5

// Elsewhere says that the trip's route is not where the map data are: no
// corridor reaches from one to the other.
func (m Model) Elsewhere() bool {
	box, ok := mapBox(m.Files)
	if !ok || len(m.Trip.Route) == 0 {
		return false
	}
	shrink := math.Cos(math.Min(math.Max(math.Abs(box.Min.Lat()), math.Abs(box.Max.Lat())), 85) * math.Pi / 180)
	box.Min, box.Max = orb.Point{box.Min[0] - farDegrees/shrink, box.Min[1] - farDegrees}, orb.Point{box.Max[0] + farDegrees/shrink, box.Max[1] + farDegrees}
	return !box.Intersects(m.Trip.Route.Bound())
}

// Overall is what the whole map shows, west, south, east, north: the route, or
// the map data where that is not in them, or is not there yet.
func (m Model) Overall() ([4]float64, bool) {
	if box, ok := mapBox(m.Files); ok && (len(m.Trip.Route) == 0 || m.Elsewhere()) {
		return [4]float64{box.Min[0], box.Min[1], box.Max[0], box.Max[1]}, true
	}
	return Bounds(m.Trip.Route)
}

// Bounds returns west, south, east, north of the points; ok is false for none.
func Bounds(ls orb.LineString) (b [4]float64, ok bool) {
	if len(ls) == 0 {
		return b, false
	}
	box := ls.Bound()
	return [4]float64{box.Min[0], box.Min[1], box.Max[0], box.Max[1]}, true
}

// Attributed tells whether data of OpenStreetMap are open. The invented island
// only has the same form.
func Attributed(files []File) bool {
	return slices.ContainsFunc(files, func(f File) bool { return f.OSM && !f.Sample })
}

// townNear is how near an end must be to a town to be called after it, in
// degrees of latitude: 20 km.
const townNear = 0.18

// drawnName is what a drawn route is called: after the towns at its ends.
func drawnName(towns []draw.Town, points orb.LineString) fact.Fact {
	if len(points) == 0 {
		return fact.Of("draw.name", nil)
	}
	from, to := townAt(towns, points[0]), townAt(towns, points[len(points)-1])
	switch {
	case from == "" || to == "":
		return fact.Of("draw.name", nil)
	case from == to:
		return fact.Of("draw.name_round", fact.V{"town": fact.Text(from)})
	}
	return fact.Of("draw.name_to", fact.V{"town": fact.Text(from), "town_to": fact.Text(to)})
}

func townAt(towns []draw.Town, p orb.Point) string {
	shrink := math.Cos(p.Lat() * math.Pi / 180)
	away := func(t draw.Town) float64 {
		return math.Hypot(math.Remainder(t.Point.Lon()-p.Lon(), 360)*shrink, t.Point.Lat()-p.Lat())
	}
	if len(towns) == 0 {
		return ""
	}
	if t := slices.MinFunc(towns, func(a, b draw.Town) int { return cmp.Compare(away(a), away(b)) }); away(t) <= townNear {
		return t.Name
	}
	return ""
}

// renamed is the name of the trip along a newly drawn route: that which a
// person gave to the one that was drawn before stays.
func (m Model) renamed(points orb.LineString) string {
	called := func(points orb.LineString) string { return m.Say.Fact(drawnName(m.Backdrop.Towns, points)) }
	was := m.Trip
	if len(was.Points) > 0 && was.Name != "" && was.Name != m.Say.Text("draw.name") && was.Name != called(was.Points) {
		return was.Name
	}
	return called(points)
}
