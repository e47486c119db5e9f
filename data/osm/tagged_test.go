package osm_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"ullage/data/osm"
	"ullage/planner/trip"
)

// What a web front end of Overpass exports: the object in @id, its tags as properties, ways as areas or by their centre.
const exported = `{"type":"FeatureCollection","generator":"x","timestamp":"2025-01-19T20:21:22Z","features":[
{"type":"Feature","id":"way/7","properties":{"@id":"way/7","tourism":"camp_site","name":"Far Field","sanitary_dump_station":"yes"},
 "geometry":{"type":"Polygon","coordinates":[[[1,42],[1.002,42],[1.002,42.002],[1,42.002],[1,42]]]}},
{"type":"Feature","id":"node/5","properties":{"@id":"node/5","@relations":[],"amenity":"water_point"},"geometry":{"type":"Point","coordinates":[1.001,42.001]}},
{"type":"Feature","id":"node/5","properties":{"@id":"node/5","amenity":"water_point"},"geometry":{"type":"Point","coordinates":[1.001,42.001]}},
{"type":"Feature","properties":{"type":"relation","id":3,"tags":{"amenity":"fuel","fuel:diesel":"yes"}},"geometry":{"type":"MultiPolygon","coordinates":[[[[2,42],[2.1,42],[2.1,42.1],[2,42]]]]}},
{"type":"Feature","id":11,"properties":{"amenity":"fuel","fuel:lpg":"yes"},"geometry":{"type":"LineString","coordinates":[[3,42],[3.01,42],[3.01,42.01],[3,42]]}},
{"type":"Feature","id":"node/mine","properties":{"amenity":"fuel","n":3},"geometry":{"type":"Point","coordinates":[4,42]}},
{"type":"Feature","properties":{"amenity":"fuel","access":"private"},"geometry":{"type":"Point","coordinates":[4,43]}},
{"type":"Feature","properties":{"amenity":"bench"},"geometry":{"type":"Point","coordinates":[4,44]}},
{"type":"Feature","properties":{"amenity":"fuel"},"geometry":null}]}`

func TestReadTagged(t *testing.T) {
	x, err := osm.ReadGeoJSON("export.geojson", strings.NewReader("\ufeff"+exported))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, p := range x.Places {
		got = append(got, fmt.Sprintf("%s %s %.3f,%.3f", p.ID, p.Kind, p.Point.Lon(), p.Point.Lat()))
	}
	want := []string{"n5 water 1.001,42.001", "w7 campsite 1.001,42.001", "w11 fuel 3.007,42.003", "r3 fuel 2.067,42.033", "f6 fuel 4.000,42.000"}
	if !slices.Equal(got, want) || x.Date != "2025-01-19" || x.Objects != 7 || !x.FromOSM() || len(x.Notes) != 1 {
		t.Errorf("%q of %d objects of %s, notes %v, want %q", got, x.Objects, x.Date, x.Notes, want)
	}
	if d := x.Places[0].Date; d != x.Date {
		t.Errorf("a place is of %s", d)
	}
	if site := x.Places[1]; site.Stay == nil || len(site.Outline) != 5 {
		t.Errorf("a site drawn as an area: %+v", site)
	} else if o, _ := site.Offer("fresh"); o.Answer != trip.Yes {
		t.Errorf("a site with a water point in it offers %+v", o)
	}
}

// The tags of a place are told from other properties, as they are or in "tags".
func TestTaggedPlace(t *testing.T) {
	for text, want := range map[string]bool{
		`{"amenity":"fuel"}`: true, `{"tags":{"tourism":"camp_site"}}`: true, `{"amenity":"bench"}`: false, `{"amenity":5}`: false, `{"amenity":"fuel"`: false, ``: false,
	} {
		if got := osm.TaggedPlace([]byte(text)); got != want {
			t.Errorf("%s: %v", text, got)
		}
	}
}

func TestReadTaggedErrors(t *testing.T) {
	for text, want := range map[string]string{
		`{"type":"FeatureCollection","features":[{"type":"Feature","properties":{"NAME":"Well","TYP":5},"geometry":{"type":"Point","coordinates":[1,2]}}]}`:                    `their properties begin with "NAME", "TYP"`,
		`{"type":"FeatureCollection","features":[{"type":"Feature","properties":{"amenity":"fuel"},"geometry":{"type":"Point","coordinates":[1,null]}}]}`:                      "a position is a list of numbers",
		"{\"type\":\"FeatureCollection\",\"features\":[\n{\"type\":\"Feature\",\"properties\":{\"amenity\":\"fuel\"},\"geometry\":{\"type\":\"Point\",\"coordinates\":[1]}}]}": "line 2, column 1",
		`{"type":"FeatureCollection","features":[{"type":"Feature","properties":{"amenity":"fuel"},"geometry":{"type":"Point","coordinates":[1,91]}}]}`:                        "1, 91 is no longitude and latitude",
		`{"type":"FeatureCollection","features":[{"type":"Feature","properties":{"amenity":"fuel"},"geometry":{"type":"Point","coordinates":[180.5,1]}}]}`:                     "180.5, 1 is no longitude and latitude",
	} {
		if _, err := osm.ReadGeoJSON("x.geojson", strings.NewReader(text)); err == nil || !strings.Contains(err.Error(), "x.geojson") || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want it to say %q", text, err, want)
		}
	}
}

// Counts of the open data's own description, and by grep -c of its text.
func TestTaggedCounts(t *testing.T) {
	for _, tc := range []struct {
		path, tag string
		tagged    int // offers with that evidence
	}{
		{"finland-fuel-osm-2022-02-13.geojson", "fuel:diesel=yes", 619 - 3}, // motorcar=no, vehicle=no, motorboat=designated
		{"finland-fuel-osm-2022-02-13.geojson", "fuel:lpg=yes", 41},
		{"finland-fuel-osm-2022-02-13.geojson", "fuel:adblue=yes", 52},
		{"isle-of-man-fuel-osm-2025-10-18.geojson", "amenity=fuel", 21}, // diesel likely at each
	} {
		f, err := os.Open(filepath.Join("..", "..", "..", "shared", "data", "places", tc.path))
		if err != nil {
			t.Skip("open data are not beside the project, as ../shared/data/places: ", err)
		}
		defer f.Close()
		x, err := osm.ReadGeoJSON(tc.path, f)
		if err != nil {
			t.Fatal(err)
		}
		tagged := 0
		for _, p := range x.Places {
			if slices.ContainsFunc(p.Offers, func(o trip.Offer) bool { return o.Tag == tc.tag }) {
				tagged++
			}
		}
		if tagged != tc.tagged {
			t.Errorf("%s: %d places by %s of %d, want %d", tc.path, tagged, tc.tag, len(x.Places), tc.tagged)
		}
	}
}
