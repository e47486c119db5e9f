package page

import (
	"math"

	"github.com/paulmach/orb"
)

// along returns the point at a share of a line's length, good enough for a
// dot on a map: lengths are planar with longitudes shortened by latitude.
// ok is false for a line without length.
func along(line orb.LineString, share float64) (p orb.Point, ok bool) {
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

// between returns the piece of a line between two shares of its length.
func between(line orb.LineString, from, to float64) orb.LineString {
	a, ok := along(line, from)
	b, _ := along(line, to)
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
