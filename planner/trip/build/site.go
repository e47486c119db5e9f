package build

import (
	"math"

	"github.com/paulmach/orb"

	"ullage/geo"
	"ullage/planner/trip"
)

// sameSiteM: places nearer to each other than this are closed together. Own
// choice: the size of a large service area.
const sameSiteM = 150

// sites names, for each stop, the site and the operator that it shares its
// fate with. A site is a chain of places, each within sameSiteM of the next;
// its name is the smallest place id. All passes of a place and all lengths of
// stay there are one site. O(places log places + near pairs).
func (b *gathering) sites() {
	var places []*trip.Place
	seen := map[string]bool{}
	for _, s := range b.Around {
		if p := b.Calls[s.ID].Place; !seen[p.ID] {
			places, seen[p.ID] = append(places, p), true
		}
	}
	northwards := along(len(places), func(i int) (float64, string) { return places[i].Point.Lat(), places[i].ID })
	site := map[string]string{} // place → one nearer to the site's name, at last itself
	var find func(id string) string
	find = func(id string) string {
		if up, ok := site[id]; ok {
			site[id] = find(up)
			return site[id]
		}
		return id
	}
	const degrees = sameSiteM / 110e3 // a degree of latitude is at least 110.5 km (WGS84)
	for i, from := range northwards {
		p := places[from]
		for _, to := range northwards[i+1:] {
			q := places[to]
			if q.Point.Lat()-p.Point.Lat() > degrees {
				break
			}
			if aside(p.Point, q.Point) > degrees {
				continue // spares the exact distance: most places lie at some latitude of a long route
			}
			if x, y := find(p.ID), find(q.ID); x != y && geo.DistanceM(p.Point, q.Point) < sameSiteM {
				site[max(x, y)] = min(x, y)
			}
		}
	}
	for i := range b.Around {
		p := b.Calls[b.Around[i].ID].Place
		b.Around[i].Site, b.Around[i].Operator = find(p.ID), p.Operator
	}
}

// aside is how far two points lie apart from west to east, at least, in degrees of latitude.
func aside(p, q orb.Point) float64 {
	degrees := math.Abs(q.Lon() - p.Lon())
	pole := max(math.Abs(p.Lat()), math.Abs(q.Lat()))
	return min(degrees, 360-degrees) * math.Cos(pole*math.Pi/180)
}
