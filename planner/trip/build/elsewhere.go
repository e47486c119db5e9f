package build

import (
	"fmt"
	"math"

	"github.com/paulmach/orb"

	"ullage/geo"
	"ullage/planner/trip"
)

// elsewhere is why the map data cannot help this trip: no place of them is as
// near to the route as the widest corridor. "" is: some are, or there are none.
func (b *Built) elsewhere(corridor *geo.Corridor) string {
	for i := range b.Places {
		if len(corridor.Passes(b.Places[i].Point, trip.MostCorridorKm*1000)) > 0 {
			return ""
		}
	}
	if len(b.Places) == 0 {
		return ""
	}
	place, away := nearestPlace(b.Places, b.Trip.Route)
	return fmt.Sprintf("The map data are of somewhere else: %s, the place that is nearest to the route, is %.0f km away from it. Draw the route where the map data are, or open map data of where the route is.",
		place.Label(), away/1000)
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
