package road

import (
	"math"

	"github.com/paulmach/orb"
)

// This file finds where a vehicle drives in to a place, and what road a click means.

// Handicaps are metres that a road counts as farther when a place looks for its road: nobody drives in from a motorway if a
// service road is as near. Common practice, no source.
const (
	fastHandicap   = 40  // motorways, trunk roads and links, which have few entrances
	bridgeHandicap = 30  //
	trackHandicap  = 25  // tracks, and roads behind gates
	apartHandicap  = 300 // roads that are not joined with the rest
)

// Snap returns the spot on the nearest road that the vehicle may use, for a click. Beyond maxM metres, and where there is no
// road, OK is false. Cost about 20 µs in a town.
func (r *Router) Snap(p orb.Point, maxM float64) Spot {
	return r.snap(p, maxM, func(*Road) float64 { return 0 })
}

// SnapPlace returns the spot where a vehicle leaves the road for a place: the nearest road that it may use and from which
// places are entered, forecourts and service roads included. Never on a ferry or in a tunnel; rather not on a motorway, a
// bridge, a track or behind a gate. Walls are not known: OffM says how far the place is.
func (r *Router) SnapPlace(p orb.Point, maxM float64) Spot {
	return r.snap(p, maxM, func(road *Road) float64 {
		handicap := 0.0
		switch road.Class {
		case Ferry:
			return math.Inf(1)
		case Motorway, MotorwayLink, Trunk, TrunkLink:
			handicap = fastHandicap
		case Track:
			handicap = trackHandicap
		}
		if road.Flags&Tunnel != 0 {
			return math.Inf(1)
		}
		if road.Flags&Bridge != 0 {
			handicap += bridgeHandicap
		}
		if road.Flags&Gated != 0 {
			handicap += trackHandicap
		}
		return handicap
	})
}

func (r *Router) snap(p orb.Point, maxM float64, handicap func(*Road) float64) Spot {
	// Look near first: most have a road within 100 m.
	for radius := min(100, maxM); ; radius = min(4*radius, maxM) {
		var best Spot
		least := math.Inf(1)
		for _, s := range r.near(p, radius) {
			road := &r.Net.roads[r.Net.road[s.Edge]]
			far := s.OffM + handicap(road)
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
	c := spotOf(p)
	kLat := 111195e-7 // metres per unit of latitude, as quickM
	kLon := kLat * math.Cos(p[1]*math.Pi/180)
	dLat := int32(min(radius/kLat, 9e8) + 1)
	dLon := int32(min(radius/max(kLon, 1e-9), 9e8) + 1)
	w := box{c.lon - dLon, c.lat - dLat, c.lon + dLon, c.lat + dLat}
	var list []Spot
	n.boxes.each(w, len(n.from), func(e uint32) {
		if r.cost[2*e] == noWay && r.cost[2*e+1] == noWay {
			return
		}
		off, along, total := math.Inf(1), 0.0, 0.0
		last := n.at[n.from[e]]
		side := func(s spot) {
			x1, y1 := float64(last.lon-c.lon)*kLon, float64(last.lat-c.lat)*kLat
			x2, y2 := float64(s.lon-c.lon)*kLon, float64(s.lat-c.lat)*kLat
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
		n.inner(e, side)
		side(n.at[n.to[e]])
		if off > radius {
			return
		}
		cm := uint32(0)
		if total > 0 {
			cm = uint32(math.Round(float64(n.cm[e]) * along / total))
		}
		list = append(list, Spot{true, e, min(cm, n.cm[e]), off})
	})
	return list
}
