package onward

import (
	"math"

	"github.com/paulmach/orb"

	"ullage/geo"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// position finds the kilometre of the route. Where the route comes by more
// than once, the pass counts that the plan expects at this time.
func position(line *geo.Line, t trip.Trip, it trip.Itinerary, now Now, min float64) (km, offM float64, err error) {
	length := line.LengthM() / 1000
	switch {
	case now.Km != nil:
		km = *now.Km - t.DoneKm // from where the trip began
	case now.At != nil:
		// The narrowest corridor first: a wide one takes a way out and back for one pass.
		corridor := geo.NewCorridor(line)
		var passes []geo.Pass
		for radius := offRouteKm / 512; len(passes) == 0 && radius <= offRouteKm; radius *= 2 {
			passes = corridor.Passes(*now.At, radius*1000)
		}
		if len(passes) == 0 {
			return 0, 0, fact.Fail(nil, offRoute, fact.V{"km": fact.Km(offRouteKm, 0)})
		}
		nearest, expected := math.Inf(1), expectedKm(it, min)
		for _, p := range passes {
			nearest = math.Min(nearest, p.OffM)
		}
		best := math.Inf(1)
		for _, p := range passes {
			if d := math.Abs(p.AlongM/1000 - expected); p.OffM <= nearest+hereKm*1000 && d < best {
				km, offM, best = p.AlongM/1000, p.OffM, d
			}
		}
	default:
		return 0, 0, fact.Fail(nil, wantPlace, nil)
	}
	if !(km >= 0 && km <= length-0.05) {
		return 0, 0, fact.Fail(nil, pastEnd, fact.V{"length": fact.Km(t.DoneKm+length, 1)})
	}
	return km, offM, nil
}

// expectedKm is where the plan is at a minute.
func expectedKm(it trip.Itinerary, min float64) float64 {
	p := it.Strips[0].Points
	for i := 1; i < len(p); i++ {
		if min < p[i].Min {
			if p[i].Min == p[i-1].Min {
				return p[i-1].Km
			}
			return p[i-1].Km + (p[i].Km-p[i-1].Km)*math.Max(0, min-p[i-1].Min)/(p[i].Min-p[i-1].Min)
		}
	}
	return p[len(p)-1].Km
}

// rest is the route from here on; from the very spot, if it is off the route.
func rest(line *geo.Line, km, offM float64, at *orb.Point) orb.LineString {
	out := orb.LineString{line.At(km * 1000)}
	if at != nil && offM > hereKm*1000 {
		out = orb.LineString{*at, out[0]}
	}
	for i, p := range line.Points() {
		if line.AlongM(i) > km*1000+0.01 {
			out = append(out, p)
		}
	}
	return out
}
