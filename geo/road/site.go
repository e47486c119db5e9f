package road

import (
	"math"
	"slices"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"

	"ullage/geo/road/net"
)

// This file finds where a vehicle drives in to a place.

// Handicaps are metres that a road counts as farther when a place looks for its road: nobody drives in from a motorway if a
// service road is as near. Common practice, no source.
const (
	fastHandicap   = 40 // motorways, trunk roads and links, which have few entrances
	bridgeHandicap = 30 //
	trackHandicap  = 25 // tracks, and roads behind gates
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
		spot.OffM += net.QuickM(gate, s.Point)
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
	reach, corners := 0.0, map[net.Pos]bool{}
	for _, p := range ring {
		reach = max(reach, net.QuickM(s.Point, p))
		corners[net.PosOf(p)] = true
	}
	// A road along the outline is not within it: a little farther away one must be within still.
	within := func(p orb.Point) bool {
		t := 1 + besideM/max(net.QuickM(s.Point, p), besideM)
		return planar.RingContains(ring, orb.Point{s.Point[0] + t*(p[0]-s.Point[0]), s.Point[1] + t*(p[1]-s.Point[1])})
	}
	leastIn, leastBy := math.Inf(1), math.Inf(1)
	for _, at := range r.near(s.Point, min(reach+1, maxM)) {
		handicap := r.entering(at)
		if at.OffM+handicap >= max(leastIn, leastBy) || !r.joined(at.Edge) {
			continue
		}
		if in := r.within(at, s.Point, within); in.OK && in.OffM+handicap < leastIn {
			inside, leastIn = in, in.OffM+handicap
		} else if !in.OK && at.OffM+handicap < leastBy && slices.ContainsFunc(r.Net.Points(at.Edge), func(p net.Pos) bool { return corners[p] }) {
			beside, leastBy = at, at.OffM+handicap
		}
	}
	return inside, beside
}

// within returns the spot of an edge for which is is true and that is nearest to a point: at, which is the nearest of all,
// or one of the edge's corners.
func (r *Router) within(at Spot, from orb.Point, is func(orb.Point) bool) (best Spot) {
	n := r.Net
	if is(at.Point(n)) {
		at.In = true
		return at
	}
	ls := net.LineOf(n.Points(at.Edge))
	along, whole := 0.0, net.LineM(ls)
	for i, p := range ls {
		if i > 0 {
			along += net.QuickM(ls[i-1], p)
		}
		if off := net.QuickM(from, p); is(p) && (!best.OK || off < best.OffM) {
			cm := uint32(math.Round(float64(n.LengthCm(at.Edge)) * along / whole))
			best = Spot{OK: true, Edge: at.Edge, Cm: min(cm, n.LengthCm(at.Edge)), OffM: off, In: true}
		}
	}
	return best
}

// entering is the handicap of a road from which a place is to be entered.
func (r *Router) entering(at Spot) float64 {
	road := r.Net.Road(at.Edge)
	handicap := 0.0
	switch road.Class {
	case net.Ferry:
		return math.Inf(1)
	case net.Motorway, net.MotorwayLink, net.Trunk, net.TrunkLink:
		handicap = fastHandicap
	case net.Track:
		handicap = trackHandicap
	}
	if road.Flags&net.Tunnel != 0 {
		return math.Inf(1)
	}
	if road.Flags&net.Bridge != 0 {
		handicap += bridgeHandicap
	}
	if road.Flags&net.Gated != 0 {
		handicap += trackHandicap
	}
	return handicap
}
