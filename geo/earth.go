package geo

import (
	"math"

	"github.com/paulmach/orb"
)

// This file holds the ellipsoid as seen from its centre: earth-centred
// coordinates have no antimeridian and no poles, and a straight chord between
// two points d apart is shorter than the way over the ground by d³/24R² only
// (5 mm at 18 km), which [chordToGround] gives back.

// WGS84: semi-major axis and flattening, National Imagery and Mapping Agency,
// TR8350.2, third edition, 2000, tables 3.1 and 3.3.
const (
	axisA      = 6378137.0
	flattening = 1 / 298.257223563
	axisB      = axisA * (1 - flattening)
	ecc2       = flattening * (2 - flattening) // first eccentricity squared

	// The smallest radius of curvature anywhere: the meridian's at the equator.
	leastRadius = axisB * axisB / axisA
)

// A struct, not an array: the compiler keeps it in registers.
type vec struct{ x, y, z float64 }

func (a vec) sub(b vec) vec     { return vec{a.x - b.x, a.y - b.y, a.z - b.z} }
func (a vec) dot(b vec) float64 { return a.x*b.x + a.y*b.y + a.z*b.z }
func (a vec) norm() float64     { return math.Sqrt(a.dot(a)) }

// lerp returns the point a share t of the way from a to b.
func lerp(a, b vec, t float64) vec {
	return vec{a.x + t*(b.x-a.x), a.y + t*(b.y-a.y), a.z + t*(b.z-a.z)}
}

// centred returns the earth-centred coordinates of p in metres (TR8350.2,
// equation 4-14, at height 0) and the Gaussian radius of curvature there, the
// mean over all directions.
func centred(p orb.Point) (v vec, radius float64) {
	sinLat, cosLat := math.Sincos(p[1] * math.Pi / 180)
	sinLon, cosLon := math.Sincos(p[0] * math.Pi / 180)
	w2 := 1 - ecc2*sinLat*sinLat
	n := axisA / math.Sqrt(w2)
	return vec{n * cosLat * cosLon, n * cosLat * sinLon, n * (1 - ecc2) * sinLat}, axisB / w2
}

// geodetic returns the point on the ground below or above v, which lies within
// a few kilometres of it (B. R. Bowring, "Transformation from spatial to
// geographical coordinates", Survey Review 23, 1976; error far below 1 mm).
func geodetic(v vec) orb.Point {
	p := math.Hypot(v.x, v.y)
	sin, cos := math.Sincos(math.Atan2(v.z*axisA, p*axisB))
	lat := math.Atan2(v.z+ecc2/(1-ecc2)*axisB*sin*sin*sin, p-ecc2*axisA*cos*cos*cos)
	return orb.Point{math.Atan2(v.y, v.x) * 180 / math.Pi, lat * 180 / math.Pi}
}

// chordToGround turns a straight distance into one over the ground.
func chordToGround(chord, radius float64) float64 {
	return 2 * radius * math.Asin(math.Min(1, chord/(2*radius)))
}

// groundToChord is the inverse of chordToGround; half way round the earth it
// is the diameter, and it grows no more.
func groundToChord(ground, radius float64) float64 {
	return 2 * radius * math.Sin(math.Min(math.Pi/2, ground/(2*radius)))
}
