package build

import (
	"math"
	"slices"
	"ullage/geo"
	"ullage/planner/fact"
	"ullage/planner/trip"

	"github.com/paulmach/orb"
)

// elsewhereKind: the map data are of somewhere else than the route.
const elsewhereKind fact.Kind = "map.elsewhere"

// swappedKind: route and places lie together where one of them has latitude and longitude swapped.
const swappedKind fact.Kind = "map.swapped"

// elsewhere is why the map data cannot help this trip: no place of them is as
// near to the route as the widest corridor. Nothing: some are, or there are none.
func elsewhere(t trip.Trip, places []trip.Place, corridor *geo.Corridor) fact.Fact {
	if len(places) == 0 || reaches(corridor, places) {
		return fact.Fact{}
	}
	if line, err := geo.Measure(swapped(t.Route)); err == nil && reaches(geo.NewCorridor(line), places) {
		return fact.Of(swappedKind, nil)
	}
	place, away := nearestPlace(places, t.Route)
	return fact.Of(elsewhereKind, fact.V{"name": place.Called(), "km": fact.Km(away/1000, 0)})
}

// reaches says whether some place is as near as the widest corridor.
func reaches(corridor *geo.Corridor, places []trip.Place) bool {
	return slices.ContainsFunc(places, func(p trip.Place) bool { return len(corridor.Passes(p.Point, trip.MostCorridorKm*1000)) > 0 })
}

// swapped is a line with latitude for longitude.
func swapped(line orb.LineString) orb.LineString {
	out := make(orb.LineString, len(line))
	for i, p := range line {
		out[i] = orb.Point{p[1], p[0]}
	}
	return out
}

// nearestPlace is the place that is nearest to a point of the line, and how
// many metres away it is. Places beyond the widest corridor are meant, of
// which the line's own points tell enough. O(places × points).
func nearestPlace(places []trip.Place, line orb.LineString) (trip.Place, float64) {
	var nearest trip.Place
	var at orb.Point
	least := math.Inf(1)
	for i := range places {
		p := places[i].Point
		shrink := math.Cos(p.Lat() * math.Pi / 180)
		for _, q := range line {
			dx, dy := math.Remainder(p.Lon()-q.Lon(), 360)*shrink, p.Lat()-q.Lat()
			if d := dx*dx + dy*dy; d < least {
				least, nearest, at = d, places[i], q
			}
		}
	}
	return nearest, geo.DistanceM(nearest.Point, at)
}
