package data

import (
	"bytes"
	"fmt"
	"io"

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

// maxRouteBytes bounds what is read: a track of ten points per second over
// three weeks is about this large.
const maxRouteBytes = 64 << 20

// ReadRoute reads a route from GeoJSON (RFC 7946), GPX 1.0 or 1.1, or KML 2.2;
// which of them is found from the content, name is for errors only.
//
// Every line counts as a part, in the order of the file: of GeoJSON
// LineString and MultiLineString, of GPX track segments, or routes if there
// are no tracks, of KML LineString and gx:Track. Points and areas are left
// out and noted. The text may be UTF-8, UTF-16 or, as XML, ISO-8859-1.
//
// The error names the file, line and column. Files over 64 MB are refused.
func ReadRoute(name string, r io.Reader) (Route, error) {
	all, err := io.ReadAll(io.LimitReader(r, maxRouteBytes+1))
	if err != nil {
		return Route{}, fmt.Errorf("read %s: %w", name, err)
	}
	if len(all) > maxRouteBytes {
		return Route{}, fmt.Errorf("read %s: more than %d MB is too much for a route; simplify it, or cut it to the days that matter", name, maxRouteBytes>>20)
	}
	text, err := utf8Text(all)
	if err != nil {
		return Route{}, fmt.Errorf("read %s: %w", name, err)
	}
	var route Route
	switch trimmed := bytes.TrimSpace(text); {
	case len(trimmed) == 0:
		return Route{}, fmt.Errorf("read %s: the file is empty", name)
	case trimmed[0] == '{':
		route, err = routeFromGeoJSON(text)
	case trimmed[0] == '<':
		route, err = routeFromXML(text)
	case bytes.HasPrefix(all, []byte("PK")):
		err = fmt.Errorf("this is an archive (zip or KMZ); unpack it and open the GPX, KML or GeoJSON file in it")
	case bytes.HasPrefix(all, []byte{0x1f, 0x8b}) || bytes.HasPrefix(all, []byte("BZh")):
		err = fmt.Errorf("the file is compressed; unpack it first")
	default:
		err = fmt.Errorf("line 1: neither GeoJSON, GPX nor KML; export the route as one of them")
	}
	if err != nil {
		return Route{}, fmt.Errorf("read %s: %w", name, err)
	}
	route.noteGaps()
	return route, nil
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
