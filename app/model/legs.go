package model

import (
	"maps"
	"slices"

	"github.com/paulmach/orb"

	"ullage/app/say"
	"ullage/planner/byroad"
	"ullage/planner/trip"
)

// A Pair is two points that follow each other.
type Pair = [2]orb.Point

// Legs are the ways between pairs of points, as far as they are known: by
// road where there are roads. They hold for one vehicle.
type Legs map[Pair]byroad.Leg

// With returns legs with more of them.
func (l Legs) With(pairs []Pair, legs []byroad.Leg) Legs {
	out := maps.Clone(l)
	if out == nil {
		out = Legs{}
	}
	for i, p := range pairs {
		if i < len(legs) {
			out[p] = legs[i]
		}
	}
	return out
}

// Unknown lists the pairs of points whose leg is not known.
func (l Legs) Unknown(points orb.LineString) []Pair {
	var out []Pair
	for i := 1; i < len(points); i++ {
		p := Pair{points[i-1], points[i]}
		if _, ok := l[p]; !ok && p[0] != p[1] && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

// Of returns the legs of points in order. What is not known yet is straight.
func (l Legs) Of(points orb.LineString) []byroad.Leg {
	var out []byroad.Leg
	for i := 1; i < len(points); i++ {
		leg, ok := l[Pair{points[i-1], points[i]}]
		if !ok {
			leg = byroad.Leg{Line: orb.LineString{points[i-1], points[i]}, Drawn: true}
		}
		out = append(out, leg)
	}
	return out
}

// ShownAt is where the points are drawn, and kept: on the road that a click
// meant. What a click means depends on the scale of the map; this does not.
func ShownAt(points orb.LineString, legs []byroad.Leg) orb.LineString {
	out := points.Clone()
	for i, l := range legs {
		if n := len(l.Line); n > 0 && !l.Drawn {
			out[i], out[i+1] = l.Line[0], l.Line[n-1]
		}
	}
	return out
}

// Joined is the line of legs, without repeated points.
func Joined(legs []byroad.Leg) orb.LineString {
	var out orb.LineString
	for _, l := range legs {
		for _, p := range l.Line {
			if n := len(out); n == 0 || out[n-1] != p {
				out = append(out, p)
			}
		}
	}
	return out
}

// GoneRound lists the roads that legs go round, each once.
func GoneRound(v say.Voice, legs []byroad.Leg) []string {
	var out []string
	for _, l := range legs {
		for _, a := range v.Facts(l.Avoided) {
			if !slices.Contains(out, a) {
				out = append(out, a)
			}
		}
	}
	return out
}

// A Size is what a road must take of a vehicle.
type Size struct{ height, width, length, mass float64 }

// SizeOf is the size of a vehicle.
func SizeOf(v trip.Vehicle) Size { return Size{v.HeightM, v.WidthM, v.LengthM, v.MassKg} }
