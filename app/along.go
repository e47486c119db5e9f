package page

import (
	"math"

	"github.com/paulmach/orb"
)

// along returns the point at a share of a line's length, good enough for a
// dot on a map: lengths are planar with longitudes shortened by latitude.
// ok is false for a line without length.
func along(line orb.LineString, share float64) (p orb.Point, ok bool) {
	length := func(a, b orb.Point) float64 {
		k := math.Cos((a[1] + b[1]) / 2 * math.Pi / 180)
		return math.Hypot((b[0]-a[0])*k, b[1]-a[1])
	}
	whole := 0.0
	for i := 1; i < len(line); i++ {
		whole += length(line[i-1], line[i])
	}
	if !(whole > 0) {
		return orb.Point{}, false
	}
	rest := math.Min(math.Max(share, 0), 1) * whole
	for i := 1; i < len(line); i++ {
		d := length(line[i-1], line[i])
		if rest <= d && d > 0 {
			a, b, t := line[i-1], line[i], rest/d
			return orb.Point{a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1])}, true
		}
		rest -= d
	}
	return line[len(line)-1], true
}
