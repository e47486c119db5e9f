package data

import (
	"fmt"

	"github.com/paulmach/orb"

	"ullage/geo"
)

// A Route is the line of a trip as a file tells it.
type Route struct {
	Name    string              // as the file says; may be empty
	Parts   orb.MultiLineString // at least one, each of two points or more
	Heights [][]float64         // metres, of the same shape as Parts, NaN where not stated; nil if the file has none
	Notes   []string            // what was left out or joined, in words for the reader
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
			r.note("between part %d and part %d lies a gap of %.1f km, joined by a straight line", i, i+1, d/1000)
		}
	}
}

func (r *Route) note(format string, args ...any) {
	r.Notes = append(r.Notes, fmt.Sprintf(format, args...))
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
