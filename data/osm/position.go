package osm

import (
	"math"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"
)

// This file says where an object is.

// onRing returns a point in or on a closed ring: the centroid of its area (Green's theorem on longitude and latitude, for a
// forecourt or a site the curvature does not matter), or the vertex nearest to it if the centroid lies outside, as in a
// site that bends around a lake. A ring without area gives its first point. O(len(ring)).
func onRing(ring orb.LineString) orb.Point {
	o := ring[0] // relative to the first point: keeps the digits
	var area, x, y float64
	for i := 1; i < len(ring); i++ {
		ax, ay := ring[i-1][0]-o[0], ring[i-1][1]-o[1]
		bx, by := ring[i][0]-o[0], ring[i][1]-o[1]
		cross := ax*by - bx*ay
		area += cross
		x += (ax + bx) * cross
		y += (ay + by) * cross
	}
	if math.Abs(area) < 1e-16 {
		return o
	}
	c := orb.Point{o[0] + x/(3*area), o[1] + y/(3*area)}
	if planar.RingContains(orb.Ring(ring), c) {
		return c
	}
	return nearestVertex(ring, c)
}

// onLine returns the point half-way along an open line, measured in degrees scaled for the latitude. O(len(ls)).
func onLine(ls orb.LineString) orb.Point {
	total := 0.0
	for i := 1; i < len(ls); i++ {
		total += flat(ls[i-1], ls[i])
	}
	left := total / 2
	for i := 1; i < len(ls); i++ {
		d := flat(ls[i-1], ls[i])
		if d >= left && d > 0 {
			t := left / d
			return orb.Point{ls[i-1][0] + t*(ls[i][0]-ls[i-1][0]), ls[i-1][1] + t*(ls[i][1]-ls[i-1][1])}
		}
		left -= d
	}
	return ls[0]
}

// position returns a point on a way: on its ring if it is closed, else on its line, rounded to 1e-7 degrees as the data
// are. It needs at least one point.
func position(ls orb.LineString) orb.Point {
	p := onLine(ls)
	if closed(ls) {
		p = onRing(ls)
	}
	return orb.Point{math.Round(p[0]*1e7) / 1e7, math.Round(p[1]*1e7) / 1e7}
}

func closed(ls orb.LineString) bool { return len(ls) > 3 && ls[0] == ls[len(ls)-1] }

// flat is a distance in degrees of latitude, good for comparing short distances.
func flat(a, b orb.Point) float64 {
	return math.Hypot((a[0]-b[0])*math.Cos((a[1]+b[1])/2*math.Pi/180), a[1]-b[1])
}

func nearestVertex(ls orb.LineString, p orb.Point) orb.Point {
	best := ls[0]
	for _, v := range ls[1:] {
		if flat(v, p) < flat(best, p) {
			best = v
		}
	}
	return best
}

// joinRings puts the lines of a multipolygon's outer members together at their ends. A line that finds no partner stays
// as it is (the extract cuts the object). Order and direction of the members do not matter.
func joinRings(lines []orb.LineString) []orb.LineString {
	var rings []orb.LineString
	used := make([]bool, len(lines))
	for i := range lines {
		if used[i] || len(lines[i]) == 0 {
			continue
		}
		used[i] = true
		ring := append(orb.LineString(nil), lines[i]...)
		for ring[0] != ring[len(ring)-1] {
			j, reversed := partner(lines, used, ring[len(ring)-1])
			if j < 0 {
				break
			}
			used[j] = true
			next := append(orb.LineString(nil), lines[j]...)
			if reversed {
				next.Reverse()
			}
			ring = append(ring, next[1:]...)
		}
		rings = append(rings, ring)
	}
	return rings
}

func partner(lines []orb.LineString, used []bool, end orb.Point) (i int, reversed bool) {
	for i, ls := range lines {
		if used[i] || len(ls) == 0 {
			continue
		}
		if ls[0] == end {
			return i, false
		}
		if ls[len(ls)-1] == end {
			return i, true
		}
	}
	return -1, false
}

// largest returns the ring with the greatest extent.
func largest(rings []orb.LineString) orb.LineString {
	var best orb.LineString
	size := -1.0
	for _, r := range rings {
		b := r.Bound()
		if s := flat(b.Min, b.Max); s > size {
			best, size = r, s
		}
	}
	return best
}
