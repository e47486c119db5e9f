package page

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"ullage/app/draw"
	"ullage/app/say"
	"ullage/planner/byroad"
	"ullage/planner/trip"
)

// This file writes what the map shows as GeoJSON (RFC 7946).

type props map[string]any

type mapFeature struct {
	Type       string `json:"type"`
	Geometry   any    `json:"geometry"`
	Properties props  `json:"properties"`
}

type mapGeometry struct {
	Type        string `json:"type"`
	Coordinates any    `json:"coordinates"`
}

func lineFeature(ls orb.LineString, p props) mapFeature {
	return mapFeature{"Feature", mapGeometry{"LineString", ls}, p}
}

func pointFeature(q orb.Point, p props) mapFeature {
	return mapFeature{"Feature", mapGeometry{"Point", q}, p}
}

// collection is the text of the features; what cannot be written (a position
// that is not finite) shows nothing.
func collection(features ...mapFeature) string {
	if features == nil {
		features = []mapFeature{}
	}
	b, err := json.Marshal(map[string]any{"type": "FeatureCollection", "features": features})
	if err != nil {
		return `{"type":"FeatureCollection","features":[]}`
	}
	return string(b)
}

// routeData has the route, and the pieces of it (from km to km of a length)
// that are off the roads.
func routeData(line orb.LineString, off [][2]float64, lengthKm float64) string {
	if len(line) < 2 {
		return collection()
	}
	out := []mapFeature{lineFeature(line, nil)}
	for _, o := range off {
		if piece := between(line, o[0]/math.Max(lengthKm, 1e-9), o[1]/math.Max(lengthKm, 1e-9)); len(piece) > 1 {
			out = append(out, lineFeature(piece, props{"off": true}))
		}
	}
	return collection(out...)
}

// stopsData numbers the calls of the plan.
func stopsData(it trip.Itinerary) string {
	var out []mapFeature
	for _, n := range draw.Numbers(it.Days) {
		out = append(out, pointFeature(n.Call.Point, props{"n": n.N, "index": n.N - 1, "stay": n.Call.Night}))
	}
	return collection(out...)
}

// placesData has the candidates that the plan does not use, each place once.
func placesData(it trip.Itinerary) string {
	var out []mapFeature
	seen := map[string]bool{}
	for i, c := range it.Places {
		if !c.Chosen && !seen[c.Place] {
			seen[c.Place] = true
			out = append(out, pointFeature(c.Point, props{"index": i, "out": c.Excluded != ""}))
		}
	}
	return collection(out...)
}

func landData(rings []orb.LineString) string {
	var out []mapFeature
	for _, r := range rings {
		out = append(out, mapFeature{"Feature", mapGeometry{"Polygon", []orb.LineString{r}}, nil})
	}
	return collection(out...)
}

// draftData has the legs of the route being drawn and its points. The text of
// a leg is written by hand: it is what a drag waits for.
func draftData(d Draft, legs []byroad.Leg) string {
	b := []byte(`{"type":"FeatureCollection","features":[`)
	for i, l := range legs {
		if len(l.Line) < 2 {
			continue
		}
		b = append(b, `{"type":"Feature","properties":{"index":`...)
		b = strconv.AppendInt(b, int64(i), 10)
		b = append(b, `,"off":`...)
		b = strconv.AppendBool(b, l.Drawn)
		b = append(b, `},"geometry":{"type":"LineString","coordinates":[`...)
		for k, p := range l.Line {
			if k > 0 {
				b = append(b, ',')
			}
			b = appendPoint(b, p)
		}
		b = append(b, `]}},`...)
	}
	for i, p := range shownAt(d.Points, legs) {
		b = append(b, `{"type":"Feature","properties":{"index":`...)
		b = strconv.AppendInt(b, int64(i), 10)
		b = append(b, `,"chosen":`...)
		b = strconv.AppendBool(b, i+1 == d.Chosen)
		b = append(b, `},"geometry":{"type":"Point","coordinates":`...)
		b = append(appendPoint(b, p), `}},`...)
	}
	if b[len(b)-1] == ',' {
		b = b[:len(b)-1]
	}
	return string(append(b, `]}`...))
}

// appendPoint writes a position to 1e-6 degrees, a tenth of a metre.
func appendPoint(b []byte, p orb.Point) []byte {
	b = append(b, '[')
	b = strconv.AppendFloat(b, p[0], 'f', 6, 64)
	b = append(b, ',')
	b = strconv.AppendFloat(b, p[1], 'f', 6, 64)
	return append(b, ']')
}

func cursorData(p orb.Point, ok bool) string {
	if !ok {
		return collection()
	}
	return collection(pointFeature(p, nil))
}

// bounds returns west, south, east, north of the points; ok is false for none.
func bounds(ls orb.LineString) (b [4]float64, ok bool) {
	if len(ls) == 0 {
		return b, false
	}
	box := ls.Bound()
	return [4]float64{box.Min[0], box.Min[1], box.Max[0], box.Max[1]}, true
}

// describe says what a candidate is, in a line.
func describe(c trip.Candidate, names map[string]string, v say.Voice) string {
	parts := []string{capital(kind(c.Kind))}
	if c.Name != "" {
		parts = []string{c.Name, kind(c.Kind)}
	}
	var tanks []string
	for _, t := range c.Tanks {
		if n := names[t]; n != "" {
			t = n
		}
		tanks = append(tanks, t)
	}
	if len(tanks) > 0 {
		parts = append(parts, strings.Join(tanks, ", "))
	}
	if c.Night {
		parts = append(parts, word.night)
	}
	parts = append(parts, v.Mark(c.Km, -1), v.Km(c.OffKm)+" "+word.off)
	if c.Excluded != "" {
		parts = append(parts, word.notUsed+": "+prose(v, c.Excluded))
	}
	return strings.Join(parts, " · ")
}

// shareNear returns how far along a line, from 0 to 1, the point nearest to p
// lies. Lengths are planar, as in [along].
func shareNear(line orb.LineString, p orb.Point) float64 {
	k := math.Cos(p[1] * math.Pi / 180)
	flat := func(q orb.Point) (x, y float64) { return (q[0] - p[0]) * k, q[1] - p[1] }
	best, at, whole := math.Inf(1), 0.0, 0.0
	for i := 1; i < len(line); i++ {
		ax, ay := flat(line[i-1])
		bx, by := flat(line[i])
		d := math.Hypot(bx-ax, by-ay)
		t := 0.0
		if d > 0 {
			t = math.Min(math.Max(-(ax*(bx-ax)+ay*(by-ay))/(d*d), 0), 1)
		}
		if off := math.Hypot(ax+t*(bx-ax), ay+t*(by-ay)); off < best {
			best, at = off, whole+t*d
		}
		whole += d
	}
	if whole == 0 {
		return 0
	}
	return at / whole
}
