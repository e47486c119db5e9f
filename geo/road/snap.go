package road

import (
	"math"

	"github.com/paulmach/orb"

	"ullage/geo/road/net"
)

// This file finds the roads near a point, and what road a click means.

// Snap returns the spot on the nearest road that the vehicle may use, for a click. Beyond maxM metres, and where there is no
// road, OK is false. Cost about 20 µs in a town.
func (r *Router) Snap(p orb.Point, maxM float64) Spot {
	return r.snap(p, maxM, func(Spot) float64 { return 0 })
}

// apartHandicap is how many metres a road that is not joined with the rest counts as farther. Common practice, no source.
const apartHandicap = 300

func (r *Router) snap(p orb.Point, maxM float64, handicap func(Spot) float64) Spot {
	// Look near first: most have a road within 100 m.
	for radius := min(100, maxM); ; radius = min(4*radius, maxM) {
		var best Spot
		least := math.Inf(1)
		for _, s := range r.near(p, radius) {
			far := s.OffM + handicap(s)
			if !r.joined(s.Edge) {
				far += apartHandicap
			}
			if far < least {
				best, least = s, far
			}
		}
		// Beyond the radius there may be one that counts as nearer.
		if least <= radius || radius >= maxM && !math.IsInf(least, 1) {
			return best
		}
		if radius >= maxM {
			return Spot{}
		}
	}
}

// near lists the nearest spot of every edge within radius that the vehicle may use, in order of edges.
func (r *Router) near(p orb.Point, radius float64) []Spot {
	n := r.Net
	if !(math.Abs(p[0]) <= 180 && math.Abs(p[1]) < 90) || !(radius > 0) {
		return nil
	}
	c := net.PosOf(p)
	kLat := 111195e-7 // metres per unit of latitude, as quickM
	kLon := kLat * math.Cos(p[1]*math.Pi/180)
	dLat := int32(min(radius/kLat, 9e8) + 1)
	dLon := int32(min(radius/max(kLon, 1e-9), 9e8) + 1)
	w := net.Box{MinLon: c.Lon - dLon, MinLat: c.Lat - dLat, MaxLon: c.Lon + dLon, MaxLat: c.Lat + dLat}
	var list []Spot
	n.EdgesIn(w, func(e uint32) {
		if r.cost[2*e] == noWay && r.cost[2*e+1] == noWay {
			return
		}
		off, along, total := math.Inf(1), 0.0, 0.0
		last := n.Pos(n.From(e))
		side := func(s net.Pos) {
			x1, y1 := float64(last.Lon-c.Lon)*kLon, float64(last.Lat-c.Lat)*kLat
			x2, y2 := float64(s.Lon-c.Lon)*kLon, float64(s.Lat-c.Lat)*kLat
			dx, dy := x2-x1, y2-y1
			length, t := math.Hypot(dx, dy), 0.0
			if length > 0 {
				t = max(0, min(1, -(x1*dx+y1*dy)/(length*length)))
			}
			if d := math.Hypot(x1+t*dx, y1+t*dy); d < off {
				off, along = d, total+t*length
			}
			total += length
			last = s
		}
		n.Inner(e, side)
		side(n.Pos(n.To(e)))
		if off > radius {
			return
		}
		cm := uint32(0)
		if total > 0 {
			cm = uint32(math.Round(float64(n.LengthCm(e)) * along / total))
		}
		list = append(list, Spot{OK: true, Edge: e, Cm: min(cm, n.LengthCm(e)), OffM: off})
	})
	return list
}
