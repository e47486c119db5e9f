package job

import (
	"bytes"
	"encoding/json"
	"fmt"

	"ullage/data/foreign"
	"ullage/data/osm"
	"ullage/data/tripfile"
	"ullage/data/wrong"
)

// kindOf says what a file holds, by its content: osm, places, route, trip or
// fleet. It looks no closer than it must: the reader of that kind says what
// is wrong with the rest.
func kindOf(name string, data []byte) (string, error) {
	if err := foreign.Recognise(name, data); err != nil {
		return "", err
	}
	head := bytes.TrimLeft(data[:min(len(data), 4096)], "\ufeff \t\r\n")
	switch {
	case len(head) == 0:
		return "", wrong.In(name, wrong.ErrEmpty)
	case bytes.HasPrefix(head, []byte("{")):
		return jsonKind(data), nil
	case bytes.HasPrefix(head, []byte("BZh")), bytes.HasPrefix(head, []byte{0x1f, 0x8b}), bytes.Contains(head, []byte("OSMHeader")):
		return "osm", nil
	case bytes.HasPrefix(head, []byte("<")):
		if bytes.Contains(head, []byte("<osm")) {
			return "osm", nil
		}
		return "route", nil
	case bytes.HasPrefix(head, []byte{0xfe, 0xff}), bytes.HasPrefix(head, []byte{0xff, 0xfe}):
		return "route", nil // UTF-16: its reader knows
	}
	return "", fmt.Errorf("open %s: neither an OpenStreetMap extract (.osm.pbf, .osm, .osm.gz, .osm.bz2), places or a route as GeoJSON, a GPX or KML route, nor a trip file", name)
}

// jsonKind tells trip and fleet files by their members, places from a route
// by what the features are: places have their tags, or are points only.
func jsonKind(data []byte) string {
	type geometry struct {
		Type string `json:"type"`
	}
	var f struct {
		Format   string          `json:"format"`
		Ullage   json.RawMessage `json:"ullage"`
		Geometry geometry        `json:"geometry"`
		Features []struct {
			Geometry   geometry        `json:"geometry"`
			Properties json.RawMessage `json:"properties"`
		} `json:"features"`
	}
	if err := json.Unmarshal(bytes.TrimPrefix(data, []byte("\ufeff")), &f); err != nil {
		return "route" // its reader says what is wrong and where
	}
	if f.Ullage != nil {
		return "trip"
	}
	if f.Format == tripfile.FleetFormat {
		return "fleet"
	}
	points := f.Geometry.Type == "Point"
	for _, x := range f.Features {
		if osm.TaggedPlace(x.Properties) {
			return "places"
		}
	}
	for _, x := range f.Features {
		if x.Geometry.Type != "Point" {
			return "route"
		}
		points = true
	}
	if points {
		return "places"
	}
	return "route"
}
