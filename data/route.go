package data

import (
	"github.com/paulmach/orb"

	"ullage/geo"
	"ullage/planner/fact"
)

// What there is to say of a route's file.
const (
	partsApart    fact.Kind = "route.gap"         // before, next, off
	otherShapes   fact.Kind = "route.shapes"      // points, areas: left out
	shortLines    fact.Kind = "route.short_lines" // n: left out
	shortSegments fact.Kind = "route.segments"    // n: left out
	wayPoints     fact.Kind = "route.waypoints"   // n: left out
	routesBeside  fact.Kind = "route.routes"      // n: left out beside tracks
)

// Kinds of what a file has instead of a route.
const (
	noLine        fact.Kind = "route.none"     // nothing of the kind
	onlyWaypoints fact.Kind = "route.unjoined" // {n} of them
	onlyLinks     fact.Kind = "route.links"    // to other files
)

// A Route is the line of a trip as a file tells it.
type Route struct {
	Name    string              // as the file says; may be empty
	Parts   orb.MultiLineString // at least one, each of two points or more
	Heights [][]float64         // metres, of the same shape as Parts, NaN where not stated; nil if the file has none
	Notes   []fact.Fact         // what was left out or joined, to be told
}

// Line joins the parts in order. A point that ends one part and starts the
// next is kept once.
func (r Route) Line() orb.LineString {
	var line orb.LineString
	for _, part := range r.Parts {
		if n := len(line); n > 0 && len(part) > 0 && line[n-1] == part[0] {
			part = part[1:]
		}
		line = append(line, part...)
	}
	return line
}

// noteGaps notes the parts that do not touch: nobody drives a straight line.
func (r *Route) noteGaps() {
	const gapM = 100
	for i := 1; i < len(r.Parts); i++ {
		from, to := r.Parts[i-1][len(r.Parts[i-1])-1], r.Parts[i][0]
		if d := geo.DistanceM(from, to); d > gapM {
			r.note(partsApart, fact.V{"before": fact.Count(i), "next": fact.Count(i + 1), "off": fact.Km(d/1000, 1)})
		}
	}
}

func (r *Route) note(kind fact.Kind, v fact.V) { r.Notes = append(r.Notes, fact.Of(kind, v)) }

// noteOut notes how many of something were left out, if any.
func (r *Route) noteOut(kind fact.Kind, n int) {
	if n > 0 {
		r.note(kind, fact.V{"n": fact.Count(n)})
	}
}

// noteShapes notes what is no line.
func (r *Route) noteShapes(points, areas int) {
	if points+areas > 0 {
		r.note(otherShapes, fact.V{"points": fact.Count(points), "areas": fact.Count(areas)})
	}
}

// add appends a part with its heights, which may all be NaN.
func (r *Route) add(part orb.LineString, heights []float64) {
	r.Parts = append(r.Parts, part)
	r.Heights = append(r.Heights, heights)
}

// tidyHeights drops heights that say nothing.
func (r *Route) tidyHeights() {
	for _, part := range r.Heights {
		for _, h := range part {
			if h == h {
				return
			}
		}
	}
	r.Heights = nil
}
