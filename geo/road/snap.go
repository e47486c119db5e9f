package road

import (
	"math"
	"slices"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"
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

// Own choices, without source.
const (
	gateM   = 60 // how far at most a gate may be from its road
	besideM = 2  // how far from the outline a road may be that runs along it
)

// A Site is where one wants to drive in.
type Site struct {
	Point   orb.Point
	Outline orb.LineString // closed, around the point; nil: not known
	Gates   []orb.Point    // of the outline; nil: not known
}

// Snap returns the spot on the nearest road that the vehicle may use, for a click. Beyond maxM metres, and where there is no
// road, OK is false. Cost about 20 µs in a town.
func (r *Router) Snap(p orb.Point, maxM float64) Spot {
	return r.snap(p, maxM, func(Spot) float64 { return 0 })
}

// SnapSite returns the spot where a vehicle leaves the road for a site. That is the nearest road within the outline that is
// joined with the rest: it leads in. Without one it is the road at the gate with the least way; without gates the nearest of
// the roads that share a point with the outline, as a drive does that ends there; else the nearest road. Only roads that the
// vehicle may use, and rather those from which places are entered, see [Router.entering]. Walls are not known: OffM says how
// far the point is, by the gate if there is one. Beyond maxM metres OK is false. Cost as [Router.Snap], and as much again for
// the outline and for each gate.
func (r *Router) SnapSite(s Site, maxM float64) Spot {
	inside, beside := r.snapOutline(s, maxM)
	if inside.OK {
		return inside
	}
	var best Spot
	for _, gate := range s.Gates {
		spot := r.snap(gate, gateM, r.entering)
		spot.OffM += quickM(gate, s.Point)
		if spot.OK && spot.OffM <= maxM && (!best.OK || spot.OffM < best.OffM) {
			best = spot
		}
	}
	switch {
	case best.OK:
		return best
	case beside.OK:
		return beside
	}
	return r.snap(s.Point, maxM, r.entering)
}

// snapOutline returns the nearest spots on roads joined with the rest, within the outline and of those that share a point with
// it. OK is false for what there is not.
func (r *Router) snapOutline(s Site, maxM float64) (inside, beside Spot) {
	ring := orb.Ring(s.Outline)
	if len(ring) < 4 {
		return Spot{}, Spot{}
	}
	reach, corners := 0.0, map[spot]bool{}
	for _, p := range ring {
		reach = max(reach, quickM(s.Point, p))
		corners[spotOf(p)] = true
	}
	// A road along the outline is not within it: a little farther away one must be within still.
	within := func(p orb.Point) bool {
		t := 1 + besideM/max(quickM(s.Point, p), besideM)
		return planar.RingContains(ring, orb.Point{s.Point[0] + t*(p[0]-s.Point[0]), s.Point[1] + t*(p[1]-s.Point[1])})
	}
	leastIn, leastBy := math.Inf(1), math.Inf(1)
	for _, at := range r.near(s.Point, min(reach+1, maxM)) {
		handicap := r.entering(at)
		if at.OffM+handicap >= max(leastIn, leastBy) || !r.joined(at.Edge) {
			continue
		}
		if in := r.Net.within(at, s.Point, within); in.OK && in.OffM+handicap < leastIn {
			inside, leastIn = in, in.OffM+handicap
		} else if !in.OK && at.OffM+handicap < leastBy && slices.ContainsFunc(r.Net.points(at.Edge), func(p spot) bool { return corners[p] }) {
			beside, leastBy = at, at.OffM+handicap
		}
	}
	return inside, beside
}

// within returns the spot of an edge for which is is true and that is nearest to a point: at, which is the nearest of all,
// or one of the edge's corners.
func (n *Network) within(at Spot, from orb.Point, is func(orb.Point) bool) (best Spot) {
	if is(n.At(at)) {
		at.In = true
		return at
	}
	ls := lineOf(n.points(at.Edge))
	along, whole := 0.0, lineM(ls)
	for i, p := range ls {
		if i > 0 {
			along += quickM(ls[i-1], p)
		}
		if off := quickM(from, p); is(p) && (!best.OK || off < best.OffM) {
			cm := uint32(math.Round(float64(n.cm[at.Edge]) * along / whole))
			best = Spot{OK: true, Edge: at.Edge, Cm: min(cm, n.cm[at.Edge]), OffM: off, In: true}
		}
	}
	return best
}

// entering is the handicap of a road from which a place is to be entered.
func (r *Router) entering(at Spot) float64 {
	road := &r.Net.roads[r.Net.road[at.Edge]]
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
}

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
		list = append(list, Spot{OK: true, Edge: e, Cm: min(cm, n.cm[e]), OffM: off})
	})
	return list
}
