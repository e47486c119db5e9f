package data

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf16"

	"ullage/app/say"

	"github.com/paulmach/orb"
)

const shared = "../../shared/data"

// The corpora of general-purpose libraries (MIT, BSD, ISC, Apache-2.0): every
// file is read, or refused with the line.
func TestRouteCorpora(t *testing.T) {
	root := filepath.Join(shared, "routes")
	if _, err := os.Stat(root); err != nil {
		t.Skipf("open data are not beside the project, as ../shared/data: %v", err)
	}
	atLine := regexp.MustCompile(`line \d+|archive`)
	read, refused := 0, 0
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !regexp.MustCompile(`\.(gpx|kml|kmz|geojson)$`).MatchString(path) {
			return err
		}
		f, err := os.Open(path)
		if err != nil {
			return err
		}
		defer f.Close()
		name := strings.TrimPrefix(path, root+"/")
		route, err := ReadRoute(name, f)
		if err != nil {
			refused++
			t.Log(err)
			if !atLine.MatchString(err.Error()) || !strings.HasPrefix(err.Error(), "read "+name) {
				t.Errorf("no file or line in: %v", err)
			}
			return nil
		}
		read++
		t.Logf("%s: %q, %d parts, %d points %v", name, route.Name, len(route.Parts), len(route.Line()), route.Notes)
		if len(route.Line()) < 2 || route.Heights != nil && len(route.Heights) != len(route.Parts) {
			t.Errorf("%s: %d points, %d parts, %d heights", name, len(route.Line()), len(route.Parts), len(route.Heights))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d read, %d refused", read, refused)
	if read < 60 || read+refused < 150 {
		t.Errorf("%d read, %d refused; of more than 150 at least 60 are good", read, refused)
	}
}

// Points per file, counted with grep: '<trkpt', '<rtept' or 'gx:coord>'.
func TestRouteCounts(t *testing.T) {
	for _, tc := range []struct {
		file          string
		parts, points int
	}{
		{"twpayne+go-gpx/fells_loop.gpx", 1, 46},
		{"twpayne+go-gpx/hhs_77yl9msjcr.gpx", 30, 7275},
		{"twpayne+go-gpx/mystic_basin_trail.gpx", 3, 285},
		{"tkrajina+gpxpy/Mojstrovka.gpx", 1, 184},
		{"tkrajina+gpxpy/korita-zbevnica.gpx", 3, 871}, // a fourth segment is empty
		{"tkrajina+gpxpy/route.gpx", 1, 55},
		{"placemark+togeojson/run.gpx", 1, 206},
		{"placemark+togeojson/multitrack.kml", 1, 16},
		{"placemark+togeojson/gxtrack.kml", 1, 7},
		{"turf-route2-Rome-Naples-area-252km.geojson", 1, 2050},
		{"turf-route2-Alberta-Montana.geojson", 1, 3761},
	} {
		f, err := os.Open(filepath.Join(shared, "routes", tc.file))
		if err != nil {
			t.Skipf("open data are not beside the project, as ../shared/data: %v", err)
		}
		route, err := ReadRoute(tc.file, f)
		f.Close()
		if err != nil {
			t.Error(err)
			continue
		}
		if len(route.Parts) != tc.parts || len(route.Line()) != tc.points {
			t.Errorf("%s: %d parts, %d points, want %d, %d", tc.file, len(route.Parts), len(route.Line()), tc.parts, tc.points)
		}
	}
}

const gpxLine = `<gpx version="1.1"><trk><trkseg><trkpt lat="1" lon="2"><ele>5</ele></trkpt><trkpt lat="3" lon="4"/></trkseg></trk></gpx>`

func TestReadRoute(t *testing.T) {
	utf16le := func(s string) string {
		b := []byte{0xff, 0xfe}
		for _, u := range utf16.Encode([]rune(s)) {
			b = append(b, byte(u), byte(u>>8))
		}
		return string(b)
	}
	for _, tc := range []struct {
		name, text string
		want       orb.LineString // nil: refused
		says       string         // in the error or the notes
	}{
		{"line", `{"type":"LineString","coordinates":[[2,1],[4,3,9]]}`, orb.LineString{{2, 1}, {4, 3}}, ""},
		{"coordinates before the type", `{"coordinates":[[2,1],[4,3]],"type":"LineString"}`, orb.LineString{{2, 1}, {4, 3}}, ""},
		{"feature with unknown members", `{"type":"Feature","x":[1,"a",[]],"properties":{"name":"n"},"geometry":{"type":"LineString","coordinates":[[2,1],[4,3]]}}`, orb.LineString{{2, 1}, {4, 3}}, ""},
		{"parts that touch", `{"type":"MultiLineString","coordinates":[[[0,0],[1,0]],[[1,0],[2,0]]]}`, orb.LineString{{0, 0}, {1, 0}, {2, 0}}, ""},
		{"parts with a gap", `{"type":"MultiLineString","coordinates":[[[0,0],[1,0]],[[1,1],[2,0]]]}`, orb.LineString{{0, 0}, {1, 0}, {1, 1}, {2, 0}}, "gap of 110.6 km"},
		{"points left out", `{"type":"GeometryCollection","geometries":[{"type":"Point","coordinates":[9,9]},{"type":"LineString","coordinates":[[2,1],[4,3]]}]}`, orb.LineString{{2, 1}, {4, 3}}, "1 point and 0 areas"},
		{"no line", `{"type":"FeatureCollection","features":[]}`, nil, "no line"},
		{"swapped", "{\"type\":\"LineString\",\"coordinates\":[[2,1],\n[45,100]]}", nil, "line 2, column 1: latitude 100 is beyond 90°; are latitude and longitude swapped?"},
		{"text for a number", "{\"type\":\"LineString\",\"coordinates\":[[2,1],\n [4,\"3\"]]}", nil, "line 2"},
		{"cut short", "{\"type\":\"LineString\",\n\"coordinates\":[[2,1],", nil, "line 2, column 22: the file ends in the middle"},
		{"comma too many", "{\"type\":\n\"LineString\",}", nil, "line 2"},
		{"deep", strings.Repeat("[", 5000), nil, "neither"},
		{"deep object", strings.Repeat(`{"a":`, 5000), nil, "nested more than"},
		{"empty", "", nil, "the file is empty"},
		{"space", " \n", nil, "the file is empty"},
		{"track", gpxLine, orb.LineString{{2, 1}, {4, 3}}, ""},
		{"byte order mark", "\ufeff" + gpxLine, orb.LineString{{2, 1}, {4, 3}}, ""},
		{"UTF-16", utf16le(`<?xml version="1.0" encoding="UTF-16"?>` + gpxLine), orb.LineString{{2, 1}, {4, 3}}, ""},
		{"UTF-16 GeoJSON", utf16le(`{"type":"LineString","coordinates":[[2,1],[4,3]]}`), orb.LineString{{2, 1}, {4, 3}}, ""},
		{"ISO-8859-1", `<?xml version="1.0" encoding="ISO-8859-1"?><!--` + "\xe9" + `-->` + gpxLine, orb.LineString{{2, 1}, {4, 3}}, ""},
		{"unknown charset", `<?xml version="1.0" encoding="EBCDIC"?>` + gpxLine, nil, "unknown charset"},
		{"route", `<gpx><rte><rtept lat="1" lon="2"/><rtept lat="3" lon="4"/></rte></gpx>`, orb.LineString{{2, 1}, {4, 3}}, ""},
		{"route with points of the road", `<gpx><rte><rtept lat="1" lon="2"><extensions><x><rpt lat="2" lon="2"/></x></extensions></rtept><rtept lat="3" lon="4"/></rte></gpx>`, orb.LineString{{2, 1}, {2, 2}, {4, 3}}, ""},
		{"track before route", `<gpx><rte><rtept lat="9" lon="9"/><rtept lat="8" lon="8"/></rte>` + gpxLine[len(`<gpx version="1.1">`):], orb.LineString{{2, 1}, {4, 3}}, "1 route,"},
		{"segments", `<gpx><trk><trkseg/><trkseg><trkpt lat="1" lon="2"/></trkseg><trkseg><trkpt lat="1" lon="2"/><trkpt lat="3" lon="4"/></trkseg></trk></gpx>`, orb.LineString{{2, 1}, {4, 3}}, "2 segments"},
		{"waypoints only", `<gpx><wpt lat="1" lon="2"/><wpt lat="3" lon="4"/></gpx>`, nil, "2 waypoints but no track"},
		{"no latitude", "<gpx><trk><trkseg>\n<trkpt lon=\"2\"/></trkseg></trk></gpx>", nil, "line 2"},
		{"not a number", `<gpx><trk><trkseg><trkpt lat="NaN" lon="2"/></trkseg></trk></gpx>`, nil, "latitude NaN"},
		{"XML cut short", gpxLine[:80], nil, "ends in the middle"},
		{"entities", `<!DOCTYPE gpx [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><gpx><name>&b;</name></gpx>`, nil, "line 1"},
		{"entity of a file", `<!DOCTYPE gpx [<!ENTITY a SYSTEM "file:///etc/passwd">]><gpx><name>&a;</name></gpx>`, nil, "line 1"},
		{"deep XML", strings.Repeat("<gpx>", 5000), nil, "nested more than"},
		{"KML line", `<kml><Document><name>n</name><Placemark><LineString><coordinates> 2,1,7
			4,3 </coordinates></LineString></Placemark></Document></kml>`, orb.LineString{{2, 1}, {4, 3}}, ""},
		{"KML track", `<kml xmlns:gx="x"><gx:Track><when/><gx:coord>2 1 7</gx:coord><gx:coord>4 3 7</gx:coord></gx:Track></kml>`, orb.LineString{{2, 1}, {4, 3}}, ""},
		{"KML area and line", `<kml><Polygon><outerBoundaryIs><LinearRing><coordinates>9,9 8,8 7,7 9,9</coordinates></LinearRing></outerBoundaryIs></Polygon><LineString><coordinates>2,1 4,3</coordinates></LineString></kml>`, orb.LineString{{2, 1}, {4, 3}}, "0 points and 1 area;"},
		{"KML with spaces after commas", "<kml><LineString><coordinates>\n2, 1 4, 3</coordinates></LineString></kml>", nil, "line 2"},
		{"KML points", `<kml><Point><coordinates>2,1</coordinates></Point></kml>`, nil, "1 points"},
		{"map data", `<osm version="0.6"></osm>`, nil, "OpenStreetMap data"},
		{"web page", `<html></html>`, nil, "web page"},
		{"archive", "PK\x03\x04", nil, "archive"},
		{"compressed", "\x1f\x8b\x08", nil, "compressed"},
		{"text", "Dear friends,", nil, "neither GeoJSON, GPX nor KML"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			route, err := ReadRoute("a file", strings.NewReader(tc.text))
			if tc.want == nil {
				if err == nil || !strings.Contains(err.Error(), tc.says) || !strings.HasPrefix(err.Error(), "read a file: ") {
					t.Fatalf("ReadRoute = %v, want an error with %q", err, tc.says)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if !route.Line().Equal(tc.want) || !strings.Contains(strings.Join(say.Voice{}.Facts(route.Notes), "\n"), tc.says) {
				t.Errorf("ReadRoute = %v, %v, want %v and %q", route.Line(), route.Notes, tc.want, tc.says)
			}
		})
	}
}

func FuzzReadRoute(f *testing.F) {
	f.Add([]byte(gpxLine))
	f.Add([]byte(`{"type":"MultiLineString","coordinates":[[[0,0],[1,0]],[[1,0],[2,0]]]}`))
	f.Add([]byte(`<kml><Placemark><LineString><coordinates>1,2,3 4,5</coordinates></LineString></Placemark></kml>`))
	f.Fuzz(func(t *testing.T, text []byte) {
		route, err := ReadRoute("fuzz", strings.NewReader(string(text)))
		if err != nil {
			return
		}
		for i, part := range route.Parts {
			if len(part) < 2 || route.Heights != nil && len(route.Heights[i]) != len(part) {
				t.Fatalf("part %d: %v, heights %v", i, part, route.Heights)
			}
		}
	})
}
