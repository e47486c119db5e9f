package mapview

import (
	"encoding/json"
	"math"
	"slices"
	"strconv"

	"github.com/paulmach/orb"

	"ullage/app/draw"
	"ullage/app/model"
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
		if piece := model.Between(line, o[0]/math.Max(lengthKm, 1e-9), o[1]/math.Max(lengthKm, 1e-9)); len(piece) > 1 {
			out = append(out, lineFeature(piece, props{"off": true}))
		}
	}
	return collection(out...)
}

// stopsData numbers the calls of the plan.
func stopsData(it trip.Itinerary) string {
	var out []mapFeature
	for i, n := range draw.Numbers(it.Days) {
		out = append(out, pointFeature(n.Call.Point, props{"n": n.N, "index": i, "stay": n.Call.Night}))
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
			out = append(out, pointFeature(c.Point, props{"index": i, "out": c.Excluded != nil}))
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
func draftData(d model.Draft, legs []byroad.Leg) string {
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
	for i, p := range model.ShownAt(d.Points, legs) {
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

// othersData has the other ways that are offered, as one line each, and its
// letter at the point that would be set.
func othersData(d *model.Draft) string {
	if d == nil || d.Ways == nil {
		return collection()
	}
	var out []mapFeature
	for i, way := range d.Ways.List {
		line := slices.Concat(way[0].Line, way[1].Line)
		out = append(out, lineFeature(line, props{"index": i}), pointFeature(way[1].Line[0], props{"letter": wayLetter(i)}))
	}
	return collection(out...)
}

// wayLetter names a way on the map and in its button.
func wayLetter(i int) string { return string(rune('A' + i)) }
