package road

import (
	"github.com/paulmach/orb"

	"ullage/geo/road/net"
)

// A Stretch is a piece of a trip's route: on roads, or as drawn where there are none.
type Stretch struct {
	Steps []net.Step     // on roads
	Drawn orb.LineString // else
}

// A Course is a trip's route from start to end.
type Course []Stretch

// Course returns the path as a course.
func (p Path) Course() Course { return Course{{Steps: p.Steps}} }

// Line returns the line of a stretch of a network, without repeated points where it is on roads.
func (s Stretch) Line(n *net.Network) orb.LineString {
	if len(s.Steps) == 0 {
		return s.Drawn
	}
	return n.Line(s.Steps)
}

// Through returns the course through points in order, as clicked on a map: one stretch for each two of them, over the best way
// where both lie within maxM of a road and a way leads from one to the other, else straight as drawn. So the stretch that a
// point belongs to is known when it is moved, and what is off the network is marked by being drawn. Fewer than two points give
// an empty course. Cost about 0.2 ms a point.
func (q *Query) Through(points []orb.Point, maxM float64) (c Course) {
	at := func(s Spot, p orb.Point) orb.Point {
		if s.OK {
			return s.Point(q.r.Net)
		}
		return p
	}
	var before Spot
	for i, p := range points {
		s := q.r.Snap(p, maxM)
		if i > 0 {
			if steps, err := q.leg(before, s, nil); err == nil {
				c = append(c, Stretch{Steps: steps})
			} else {
				c = append(c, Stretch{Drawn: orb.LineString{at(before, points[i-1]), at(s, p)}})
			}
		}
		before = s
	}
	return c
}

// drawnKmh is driven off the network, where nothing is known: from memory.
const drawnKmh = 30

// Measure returns the length and the time of a course. Off the network it is driven at 30 km/h. On roads that are closed to
// the vehicle it counts what the road would allow.
func (r *Router) Measure(c Course) (metres, seconds float64) {
	for _, s := range c {
		if len(s.Steps) == 0 {
			m := net.LineM(s.Drawn)
			metres, seconds = metres+m, seconds+m*3.6/drawnKmh
			continue
		}
		p := r.PathOf(s.Steps)
		metres, seconds = metres+p.LengthM, seconds+p.Seconds
	}
	return metres, seconds
}
