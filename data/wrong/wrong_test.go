package wrong_test

import (
	"bytes"
	"compress/gzip"
	"context"
	"errors"
	"os"
	"strings"
	"testing"

	"ullage/app/say"
	"ullage/data"
	"ullage/data/osm"
	"ullage/data/tripfile"
	"ullage/data/wrong"
	"ullage/planner/fact"
)

// What people are told of a file: what is wrong and what to do, in words of the
// catalogue; the words of a decoder only as a detail.
func TestSaid(t *testing.T) {
	route := func(text string) error { _, err := data.ReadRoute("a.gpx", strings.NewReader(text)); return err }
	places := func(text string) error {
		_, err := osm.Read(context.Background(), "a.osm", strings.NewReader(text), osm.Options{})
		return err
	}
	trip := func(text string) error { _, _, err := tripfile.Read("a.json", strings.NewReader(text)); return err }
	fleet := func(text string) error {
		_, _, err := tripfile.ReadFleet("a.json", strings.NewReader(text))
		return err
	}
	opened := func(name string) error { _, err := os.Open(name); return wrong.In(name, err) }
	var packed bytes.Buffer
	z := gzip.NewWriter(&packed)
	z.Write([]byte("<osm></osm>"))
	z.Close()
	for _, c := range []struct {
		name string
		err  error
		want string
	}{
		{"no file", opened("nowhere.osm"), "There is no file nowhere.osm."},
		{"empty route", route(" \n"), "a.gpx is empty."},
		{"empty map", places(""), "a.osm is empty."},
		{"route cut off", route(`{"type":"LineString","coordinates":[[2,1],`), "a.gpx ends in the middle. Copy or download it again."},
		{"GPX cut off", route(`<gpx><trk><trkseg><trkpt lat="1"`), "a.gpx ends in the middle. Copy or download it again."},
		{"trip cut off", trip(`{"type":`), "a.json ends in the middle. Copy or download it again."},
		{"packed map cut off", places(packed.String()[:20]), "a.osm ends in the middle. Copy or download it again."},
		{"route as a map", places("<gpx></gpx>"), "a.osm is no map. Choose the OpenStreetMap extract (.osm.pbf, .osm, .osm.bz2 or .osm.gz) of your region."},
		{"text as a map", places("hello"), "a.osm is no map. Choose the OpenStreetMap extract (.osm.pbf, .osm, .osm.bz2 or .osm.gz) of your region."},
		{"damaged map", places(`<osm><node id="x"/></osm>`), "a.osm is damaged. Copy or download it again. (Detail: "},
		{"map as a route", route("<osm></osm>"), "a.gpx: this is a map, not a route. Add it as map data."},
		{"text as a route", route("hello"), "a.gpx: this is no route. Export the route as GPX, GeoJSON or KML."},
		{"waypoints", route(`<gpx><wpt lat="1" lon="2"/></gpx>`), "a.gpx: it has 1 waypoint, but no track and no route."},
		{"no line", route(`{"type":"Point","coordinates":[2,1]}`), "a.gpx: there is no route in it. Export the track or the line of the route."},
		{"swapped", route(`{"type":"LineString","coordinates":[[50,120],[51,121]]}`), "a.gpx, line 1, column 37: 120 cannot be a latitude: it seems that latitude and longitude are the wrong way round."},
		{"packed route", route(packed.String()), "a.gpx: this is packed. Unpack it first."},
		{"another version", trip(`{"type":"FeatureCollection","ullage":{"format":"ullage-trip-9"}}`), "a.json was written by a newer version of Ullage. Open it with that, or get it here first."},
		{"no trip", trip(`{"type":"FeatureCollection","features":[]}`), "a.json: this is GeoJSON, but no trip. It may do as a route."},
		{"no fleet", fleet(`{"format":"ullage-fleet-1","vehicles":[]}`), "a.json: it has no vehicles. Give at least one."},
		{"misspelt", fleet(`{"format":"ullage-fleet-1","vehicle":[]}`), "a.json, line 1, column 28: unknown field \"vehicle\": did you mean \"vehicles\"?"},
		{"number", fleet(`{"format":7}`), "a.json, line 1, column 11: format: found 7, want text"},
	} {
		if got := (say.Voice{}).Value(fact.Why(c.err)); c.err == nil || !strings.HasPrefix(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// An error is said once, whoever passes it on.
func TestIn(t *testing.T) {
	if wrong.In("a", nil) != nil {
		t.Error("nothing is wrong with a")
	}
	cause := errors.New("x")
	err := wrong.In("b", wrong.In("a", cause))
	if !errors.Is(err, cause) || err.Error() != "read a: x" {
		t.Errorf("%v", err)
	}
}
