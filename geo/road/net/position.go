package net

// This file holds positions in whole units, so that equal points are equal, and lines of them.

import (
	"math"

	"github.com/paulmach/orb"
)

// A Pos is a position in 1e-7 degrees, so to a centimetre. Longitudes lie within ±180°, latitudes within ±90°.
type Pos struct{ Lon, Lat int32 }

// PosOf returns the position of a point on earth, rounded. What comes of NaN or of degrees out of range is not defined.
func PosOf(p orb.Point) Pos {
	return Pos{int32(math.Round(p[0] * 1e7)), int32(math.Round(p[1] * 1e7))}
}

// Point returns the point at a position.
func (s Pos) Point() orb.Point { return orb.Point{float64(s.Lon) / 1e7, float64(s.Lat) / 1e7} }

// appendBend appends a difference as a zigzag varint.
func appendBend(b []byte, d int32) []byte {
	v := uint32(d)<<1 ^ uint32(d>>31)
	for v >= 0x80 {
		b = append(b, byte(v)|0x80)
		v >>= 7
	}
	return append(b, byte(v))
}

func takeBend(b []byte) (int32, []byte) {
	var v uint32
	for i, shift := 0, 0; i < len(b); i, shift = i+1, shift+7 {
		v |= uint32(b[i]&0x7f) << shift
		if b[i] < 0x80 {
			return int32(v>>1) ^ -int32(v&1), b[i+1:]
		}
	}
	return 0, nil
}

// LineOf turns positions into points.
func LineOf(list []Pos) orb.LineString {
	ls := make(orb.LineString, len(list))
	for i, s := range list {
		ls[i] = s.Point()
	}
	return ls
}

// between cuts a line that is an edge of whole centimetres.
func between(ls orb.LineString, lo, hi, whole uint32) orb.LineString {
	total := 0.0
	for i := 1; i < len(ls); i++ {
		total += QuickM(ls[i-1], ls[i])
	}
	a, b := total*float64(lo)/float64(whole), total*float64(hi)/float64(whole)
	out := orb.LineString{pointAt(ls, a)}
	run := 0.0
	for i := 1; i < len(ls)-1; i++ {
		run += QuickM(ls[i-1], ls[i])
		if run > a && run < b {
			out = append(out, ls[i])
		}
	}
	return append(out, pointAt(ls, b))
}

func pointAt(ls orb.LineString, m float64) orb.Point {
	for i := 1; i < len(ls); i++ {
		d := QuickM(ls[i-1], ls[i])
		if m <= d && d > 0 {
			t := m / d
			return orb.Point{ls[i-1][0] + t*(ls[i][0]-ls[i-1][0]), ls[i-1][1] + t*(ls[i][1]-ls[i-1][1])}
		}
		m -= d
	}
	return ls[len(ls)-1]
}

// QuickM is a flat distance in metres, for shares of a line and short ways only: 111,195 m a degree on a sphere of 6,371 km, off
// by up to 0.6 %. Wrong across the antimeridian; NaN for NaN. Else use DistanceM of ullage/geo.
func QuickM(a, b orb.Point) float64 {
	k := math.Cos((a[1] + b[1]) / 2 * math.Pi / 180)
	return 111195 * math.Hypot((a[0]-b[0])*k, a[1]-b[1])
}

// LineM is the length of a line by [QuickM], in metres; a side to a point that is NaN counts nothing.
func LineM(ls orb.LineString) (m float64) {
	for i := 1; i < len(ls); i++ {
		if d := QuickM(ls[i-1], ls[i]); !math.IsNaN(d) {
			m += d
		}
	}
	return m
}
