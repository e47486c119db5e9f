package build

import (
	"math"
	"slices"
	"ullage/geo"
	"ullage/planner/fact"
	"ullage/planner/trip"

	"github.com/paulmach/orb"
)

// Near are places in the corridor, with the passes of the route from where one
// can call there.
type near struct {
	place  *trip.Place
	passes []geo.Pass
}

// near is the third stage: the places near enough to the route; apart says that the
// map data are of somewhere else, if they are.
func (c *Course) near(places []trip.Place) (list []near, apart fact.Fact) {
	corridor := geo.NewCorridor(c.route)
	for i := range places {
		p := &places[i]
		if passes := c.ashore(worthwhile(corridor.Passes(p.Point, c.Trip.CorridorKm*1000)), p.Point); len(passes) > 0 {
			list = append(list, near{p, passes})
		}
	}
	return list, elsewhere(c.Trip, places, corridor)
}

// worthwhile drops passes that are much farther off than the nearest one:
// where a road winds up a valley, the same place is left and come back to
// from every bend. A place passed on the way out and back has two near passes
// and keeps both.
func worthwhile(passes []geo.Pass) []geo.Pass {
	nearest := math.Inf(1)
	for _, p := range passes {
		nearest = min(nearest, p.OffM)
	}
	return slices.DeleteFunc(passes, func(p geo.Pass) bool { return p.OffM > 2*nearest+1000 })
}

// ashore moves passes that lie at sea to that end of the ferry which is nearer
// to the place, and drops those that are then outside the corridor.
func (c *Course) ashore(passes []geo.Pass, place orb.Point) []geo.Pass {
	if len(c.Axis.Ferries) == 0 {
		return passes
	}
	var out []geo.Pass
	for _, pass := range passes {
		if f, sea := c.Axis.AtSea(pass.AlongM / 1000); sea {
			pass.OffM = math.Inf(1)
			for _, km := range [2]float64{f.FromKm, f.ToKm} {
				if off := geo.DistanceM(c.route.At(km*1000), place); off < pass.OffM {
					pass.AlongM, pass.OffM = km*1000, off
				}
			}
		}
		if pass.OffM <= c.Trip.CorridorKm*1000 {
			out = append(out, pass)
		}
	}
	return out
}

// OffKm measures how far points lie off the route: +Inf beyond the widest corridor.
func (c *Course) OffKm() func(orb.Point) float64 {
	corridor := geo.NewCorridor(c.route)
	return func(p orb.Point) float64 {
		off := math.Inf(1)
		for _, pass := range corridor.Passes(p, trip.MostCorridorKm*1000) {
			off = min(off, pass.OffM/1000)
		}
		return off
	}
}
