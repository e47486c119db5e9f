package byroad

import (
	"math"

	"github.com/paulmach/orb"

	"ullage/geo"
	"ullage/geo/road"
	"ullage/geo/road/net"
)

// A rule turns metres along a course into metres along the route that it was
// matched to. Both go the same way, but a route is drawn roughly, or a course
// keeps to the carriageway.
type rule struct {
	course, route []float64 // ascending
	points        orb.LineString
}

const (
	markM = 500 // between two positions that are compared
	offM  = 100 // a course farther than this from the route gives no mark
)

// newRule compares positions every markM metres.
func newRule(network *net.Network, own *road.Router, c road.Course, route *geo.Line) rule {
	corridor := geo.NewCorridor(route)
	r := rule{}
	at, length := 0.0, 0.0
	mark := func(m float64, p orb.Point) {
		near, off := -1.0, math.Inf(1)
		expected, step := m, m
		if n := len(r.course); n > 0 {
			step = m - r.course[n-1]
			expected = r.route[n-1] + step
		}
		for _, pass := range corridor.Passes(p, offM) {
			if d := math.Abs(pass.AlongM - expected); d < off {
				near, off = pass.AlongM, d
			}
		}
		if off > step/2+3*offM {
			return
		}
		if n := len(r.course); n > 0 && (near <= r.route[n-1] || m <= r.course[n-1]) {
			return
		}
		r.course, r.route, r.points = append(r.course, m), append(r.route, near), append(r.points, p)
	}
	for _, s := range c {
		line := s.Line(network)
		length, _ = own.Measure(road.Course{s})
		l, err := geo.Measure(line)
		if err != nil { // a stretch of one point
			at += length
			continue
		}
		scale := length / max(l.LengthM(), 1e-9)
		next := 0.0
		for i, p := range line {
			if m := l.AlongM(i); m >= next || i == len(line)-1 {
				mark(at+m*scale, p)
				next = m + markM
			}
		}
		at += length
	}
	return r
}

// at returns the metres along the route. Between marks it is straight, beyond
// them it goes on at the same pace.
func (r rule) at(m float64) float64 {
	n := len(r.course)
	if n == 0 {
		return m
	}
	lo, hi := 0, n // the last mark that is not beyond m
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; r.course[mid] <= m {
			lo = mid
		} else {
			hi = mid
		}
	}
	if m < r.course[lo] || lo == n-1 {
		return r.route[lo] + m - r.course[lo]
	}
	share := (m - r.course[lo]) / (r.course[lo+1] - r.course[lo])
	return r.route[lo] + share*(r.route[lo+1]-r.route[lo])
}

// nearest returns the mark nearest to a point.
func (r rule) nearest(p orb.Point) (q orb.Point, ok bool) {
	best := math.Inf(1)
	for _, x := range r.points {
		if d := geo.DistanceM(p, x); d < best {
			best, q, ok = d, x, true
		}
	}
	return q, ok
}
