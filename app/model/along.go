package model

import (
	"math"

	"github.com/paulmach/orb"
)

// Along returns the point at a share of a line's length, good enough for a
// dot on a map: lengths are planar with longitudes shortened by latitude.
// ok is false for a line without length.
func Along(line orb.LineString, share float64) (p orb.Point, ok bool) {
	whole := wholeOf(line)
	if !(whole > 0) {
		return orb.Point{}, false
	}
	rest := math.Min(math.Max(share, 0), 1) * whole
	for i := 1; i < len(line); i++ {
		d := step(line[i-1], line[i])
		if rest <= d && d > 0 {
			a, b, t := line[i-1], line[i], rest/d
			return orb.Point{a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1])}, true
		}
		rest -= d
	}
	return line[len(line)-1], true
}

// Between returns the piece of a line between two shares of its length.
func Between(line orb.LineString, from, to float64) orb.LineString {
	a, ok := Along(line, from)
	b, _ := Along(line, to)
	if !ok || to <= from {
		return nil
	}
	whole := wholeOf(line)
	out, at := orb.LineString{a}, 0.0
	for i := 1; i < len(line)-1; i++ {
		if at += step(line[i-1], line[i]); at > from*whole && at < to*whole {
			out = append(out, line[i])
		}
	}
	return append(out, b)
}

// step is the planar length between two points, in degrees of latitude.
func step(a, b orb.Point) float64 {
	k := math.Cos((a[1] + b[1]) / 2 * math.Pi / 180)
	return math.Hypot((b[0]-a[0])*k, b[1]-a[1])
}

func wholeOf(line orb.LineString) (whole float64) {
	for i := 1; i < len(line); i++ {
		whole += step(line[i-1], line[i])
	}
	return whole
}

// ShareNear returns how far along a line, from 0 to 1, the point nearest to p
// lies. Lengths are planar, as in [Along].
func ShareNear(line orb.LineString, p orb.Point) float64 {
	k := math.Cos(p[1] * math.Pi / 180)
	flat := func(q orb.Point) (x, y float64) { return (q[0] - p[0]) * k, q[1] - p[1] }
	best, at, whole := math.Inf(1), 0.0, 0.0
	for i := 1; i < len(line); i++ {
		ax, ay := flat(line[i-1])
		bx, by := flat(line[i])
		d := math.Hypot(bx-ax, by-ay)
		t := 0.0
		if d > 0 {
			t = math.Min(math.Max(-(ax*(bx-ax)+ay*(by-ay))/(d*d), 0), 1)
		}
		if off := math.Hypot(ax+t*(bx-ax), ay+t*(by-ay)); off < best {
			best, at = off, whole+t*d
		}
		whole += d
	}
	if whole == 0 {
		return 0
	}
	return at / whole
}

// Same tells whether two slices are one: values are replaced, never changed.
func Same[T any](a, b []T) bool {
	return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0])
}
