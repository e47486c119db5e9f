package hours

import (
	_ "embed"
	"encoding/binary"
	"math"
	"sync"
)

// borders.bin holds the countries of holidayText as Natural Earth draws them
// (1:10 million, public domain; from the npm package world-atlas 2.0.2),
// simplified to 0.01°, in steps of 0.005°: per country its code, the number of
// rings, and per ring the number of points and their differences, as varints.
// borders.py writes it.
//
//go:embed borders.bin
var bordersFile []byte

// Borders are drawn to about a kilometre: within marginM of one a place may
// lie on either side.
const marginM = 3000

type border struct {
	country string
	rings   []ring
}

type ring struct {
	points   [][2]float64 // longitude, latitude
	min, max [2]float64
}

// borders reads the file once; nothing changes it afterwards.
var borders = sync.OnceValue(func() []border {
	const step = 0.005
	b := bordersFile
	next := func() float64 {
		v, n := binary.Varint(b)
		b = b[n:]
		return float64(v)
	}
	var all []border
	for len(b) > 0 {
		c := border{country: string(b[:2])}
		b = b[2:]
		x, y := 0.0, 0.0
		for n := next(); n > 0; n-- {
			r := ring{min: [2]float64{360, 360}, max: [2]float64{-360, -360}}
			for k := next(); k > 0; k-- {
				x, y = x+next(), y+next()
				p := [2]float64{x * step, y * step}
				r.points = append(r.points, p)
				for i := range p {
					r.min[i], r.max[i] = min(r.min[i], p[i]), max(r.max[i], p[i])
				}
			}
			c.rings = append(c.rings, r)
		}
		all = append(all, c)
	}
	return all
})

// CountriesAt returns the countries of holidayText that a place lies in or,
// within 3 km of a border or coast, may lie in.
func CountriesAt(lat, lon float64) []string {
	const degreeM = 111000
	marginLat := float64(marginM) / degreeM
	cos := math.Cos(lat * math.Pi / 180)
	marginLon := marginLat / max(cos, 0.01)
	var found []string
	for _, c := range borders() {
		inside, near := false, false
		for i := range c.rings {
			r := &c.rings[i]
			if lon < r.min[0]-marginLon || lon > r.max[0]+marginLon || lat < r.min[1]-marginLat || lat > r.max[1]+marginLat {
				continue
			}
			in, close := r.around(lon, lat, cos, marginLat)
			inside, near = inside != in, near || close
		}
		if inside || near {
			found = append(found, c.country)
		}
	}
	return found
}

// around says whether the ring goes round the point (the even-odd rule), and
// whether it comes within so many degrees of latitude of it.
func (r *ring) around(lon, lat, cos, margin float64) (inside, near bool) {
	a := r.points[len(r.points)-1]
	for _, b := range r.points {
		if (a[1] > lat) != (b[1] > lat) && lon < a[0]+(lat-a[1])/(b[1]-a[1])*(b[0]-a[0]) {
			inside = !inside
		}
		if !near && min(a[1], b[1])-margin <= lat && lat <= max(a[1], b[1])+margin {
			dx, dy := (b[0]-a[0])*cos, b[1]-a[1]
			px, py := (lon-a[0])*cos, lat-a[1]
			t := 0.0
			if l := dx*dx + dy*dy; l > 0 {
				t = max(0, min(1, (px*dx+py*dy)/l))
			}
			near = math.Hypot(px-t*dx, py-t*dy) <= margin
		}
		a = b
	}
	return inside, near
}
