package osm

import (
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/paulmach/orb"
)

// This file reads OpenStreetMap objects from GeoJSON, where other programs have written the tags as properties.
// Own structs instead of orb/geojson, which brings a database driver into the client.
// Source: RFC 7946; the ids are those that overpass-turbo ("node/135019") and osmtogeojson-like exports write.

type geoFeature struct {
	ID         any            `json:"id"`
	Properties map[string]any `json:"properties"`
	Geometry   *struct {
		Type        string          `json:"type"`
		Coordinates json.RawMessage `json:"coordinates"`
	} `json:"geometry"`
}

// ReadGeoJSON reads a FeatureCollection whose properties are OpenStreetMap tags. Features are read one at a time. Those without
// a wanted tag or without a position are passed over; Notes count the latter. A feature without an id gets the
// number that it has in the file.
func ReadGeoJSON(name string, r io.Reader) (Extract, error) {
	b := &builder{}
	d := json.NewDecoder(r)
	if err := toFeatures(d); err != nil {
		return Extract{}, fmt.Errorf("read %s: byte %d: %w", name, d.InputOffset(), err)
	}
	want := placeTags()
	for n := 1; d.More(); n++ {
		var f geoFeature
		if err := d.Decode(&f); err != nil {
			return Extract{}, fmt.Errorf("read %s: byte %d: feature %d: %w", name, d.InputOffset(), n, err)
		}
		tags := textTags(f.Properties)
		if !want.Matches(tags) {
			continue
		}
		b.x.Objects++
		ls, ok := f.line()
		if !ok {
			b.adrift++
			continue
		}
		typ, id := f.object(n)
		b.placeOn(typ, id, ls, tags, nil)
	}
	if _, err := d.Token(); err != nil {
		return Extract{}, fmt.Errorf("read %s: byte %d: the file is cut off: %w", name, d.InputOffset(), err)
	}
	return b.done(), nil
}

// toFeatures steps into the list of features.
func toFeatures(d *json.Decoder) error {
	if t, err := d.Token(); err != nil || t != json.Delim('{') {
		return fmt.Errorf("not GeoJSON: want a FeatureCollection (%v)", t)
	}
	for d.More() {
		key, err := d.Token()
		if err != nil {
			return err
		}
		if key == "features" {
			if t, err := d.Token(); err != nil || t != json.Delim('[') {
				return fmt.Errorf("features: want a list (%v)", t)
			}
			return nil
		}
		var skip json.RawMessage
		if err := d.Decode(&skip); err != nil {
			return err
		}
	}
	return fmt.Errorf("not a GeoJSON FeatureCollection: it has no features")
}

// textTags makes tags of properties: numbers as written by Go, true and false as yes and no, other values left out.
func textTags(properties map[string]any) Tags {
	tags := make(Tags, len(properties))
	for k, v := range properties {
		switch v := v.(type) {
		case string:
			tags[k] = v
		case float64:
			tags[k] = strconv.FormatFloat(v, 'f', -1, 64)
		case bool:
			tags[k] = map[bool]string{true: "yes", false: "no"}[v]
		}
	}
	return tags
}

// object reads "node/12", "way/12", "relation/12" from id or @id; a bare number is a node if the feature is a point.
func (f *geoFeature) object(number int) (typ byte, id int64) {
	for _, v := range []any{f.ID, f.Properties["@id"], f.Properties["id"]} {
		switch v := v.(type) {
		case string:
			word, digits, _ := strings.Cut(v, "/")
			if n, err := strconv.ParseInt(digits, 10, 64); err == nil && (word == "node" || word == "way" || word == "relation") {
				return word[0], n
			}
		case float64:
			if v == float64(int64(v)) {
				return f.bareType(), int64(v)
			}
		}
	}
	return f.bareType(), int64(-number) // as editors number what is not in the database
}

func (f *geoFeature) bareType() byte {
	if f.Geometry != nil && f.Geometry.Type == "Point" {
		return 'n'
	}
	return 'w'
}

// line returns the feature's line, ring or single point; of several the largest, without holes.
func (f *geoFeature) line() (ls orb.LineString, ok bool) {
	if f.Geometry == nil {
		return nil, false
	}
	var lines [][][]float64
	var err error
	switch c := f.Geometry.Coordinates; f.Geometry.Type {
	case "Point":
		var one []float64
		err = json.Unmarshal(c, &one)
		lines = [][][]float64{{one}}
	case "LineString":
		var one [][]float64
		err = json.Unmarshal(c, &one)
		lines = [][][]float64{one}
	case "MultiLineString":
		err = json.Unmarshal(c, &lines)
	case "Polygon":
		err = json.Unmarshal(c, &lines)
		lines = lines[:min(1, len(lines))]
	case "MultiPolygon":
		var areas [][][][]float64
		err = json.Unmarshal(c, &areas)
		for _, a := range areas {
			lines = append(lines, a[:min(1, len(a))]...)
		}
	}
	rings := make([]orb.LineString, len(lines))
	for i, line := range lines {
		for _, c := range line {
			if len(c) < 2 || !valid(orb.Point{c[0], c[1]}) {
				return nil, false
			}
			rings[i] = append(rings[i], orb.Point{c[0], c[1]})
		}
	}
	ls = largest(rings)
	return ls, err == nil && len(ls) > 0
}
