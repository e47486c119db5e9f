package build

import (
	"math"
	"ullage/geo"
	"ullage/planner/fact"
	"ullage/planner/trip"

	"github.com/paulmach/orb"
)

// elsewhereKind: the map data are of somewhere else than the route.
const elsewhereKind fact.Kind = "map.elsewhere"

// elsewhere is why the map data cannot help this trip: no place of them is as
// near to the route as the widest corridor. Nothing: some are, or there are none.
func elsewhere(t trip.Trip, places []trip.Place, corridor *geo.Corridor) fact.Fact {
	for i := range places {
		if len(corridor.Passes(places[i].Point, trip.MostCorridorKm*1000)) > 0 {
			return fact.Fact{}
		}
	}
	if len(places) == 0 {
		return fact.Fact{}
	}
	place, away := nearestPlace(places, t.Route)
	return fact.Of(elsewhereKind, fact.V{"name": place.Called(), "km": fact.Km(away/1000, 0)})
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
