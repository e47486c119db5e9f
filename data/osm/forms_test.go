package osm

import (
	"bytes"
	"context"
	"fmt"
	"strings"
	"testing"

	"ullage/data/demo"
	"ullage/data/osm/file/filetest"
)

// placesText writes places as "n7 fuel -1.5 52.5".
func placesText(x Extract) string {
	var words []string
	for _, p := range x.Places {
		words = append(words, fmt.Sprintf("%s %s %.4g %.4g", p.ID, p.Kind, p.Point[0], p.Point[1]))
	}
	return strings.Join(words, ", ")
}

func readBytes(data []byte) (Extract, error) {
	return Read(context.Background(), "x.osm", bytes.NewReader(data), Options{})
}

// The forms that Overpass and editors write. Source: Overpass_QL "out center", "out geom"; JOSM file format.
func TestXMLForms(t *testing.T) {
	const fuel = `<tag k="amenity" v="fuel"/>`
	for _, tc := range []struct{ name, text, want string }{
		{"ways before nodes", `<way id="2"><nd ref="1"/><nd ref="3"/>` + fuel + `</way><node id="3" lat="1" lon="4"/><node id="1" lat="1" lon="2"/>`, "w2 fuel 3 1"},
		{"center", `<way id="2"><center lat="1" lon="2"/><nd ref="1"/>` + fuel + `</way>`, "w2 fuel 2 1"},
		{"center of a cut way", `<node id="1" lat="5" lon="5"/><way id="2"><center lat="1" lon="2"/><nd ref="1"/><nd ref="3"/>` + fuel + `</way>`, "w2 fuel 2 1"},
		{"cut way of one node", `<node id="1" lat="5" lon="6"/><way id="2"><nd ref="1"/><nd ref="3"/>` + fuel + `</way>`, "w2 fuel 6 5"},
		{"relation that is no area", `<relation id="2"><center lat="1" lon="2"/><tag k="type" v="route"/>` + fuel + `</relation>`, ""},
		{"geom", `<way id="2"><nd ref="1" lat="1" lon="2"/><nd ref="3" lat="1" lon="4"/>` + fuel + `</way>`, "w2 fuel 3 1"},
		{"relation with center", `<relation id="2"><center lat="1" lon="2"/><tag k="type" v="multipolygon"/>` + fuel + `</relation>`, "r2 fuel 2 1"},
		{"no position", `<way id="2"><nd ref="1"/>` + fuel + `</way>`, ""},
		{"deleted", `<node id="1" lat="1" lon="2" action="delete">` + fuel + `</node>`, ""},
		{"not visible", `<node id="1" lat="1" lon="2" visible="false">` + fuel + `</node>`, ""},
		{"new in an editor", `<node id="-1" lat="1" lon="2">` + fuel + `</node>`, "n-1 fuel 2 1"},
	} {
		x, err := readBytes([]byte(`<osm version="0.6">` + tc.text + `</osm>`))
		if got := placesText(x); err != nil || got != tc.want {
			t.Errorf("%s: %q (%v), want %q", tc.name, got, err, tc.want)
		}
	}
}

// What is left out is counted by why: shut to all who come by road, or nowhere to
// be found. What serves no tank is none of these, nor what is no place.
func TestLeftOut(t *testing.T) {
	for _, tc := range []struct {
		text string
		want string
	}{
		{filetest.XML("amenity=fuel | access=private"), "osm.shut 1"},
		{filetest.XML("highway=services"), ""},
		{filetest.XML("amenity=bench | access=private"), ""},
	} {
		x, err := readBytes([]byte(`<osm><node id="1" lat="1" lon="2">` + tc.text + `</node></osm>`))
		if got := notesText(x); err != nil || got != tc.want || len(x.Places) > 0 {
			t.Errorf("%s: %q, %v", tc.text, got, err)
		}
	}
	fuel := filetest.XML("amenity=fuel | type=multipolygon")
	x, err := readBytes([]byte(`<osm><way id="2"><nd ref="1"/>` + fuel + `</way><relation id="3"><member type="way" ref="9" role="outer"/>` + fuel + `</relation></osm>`))
	if got := notesText(x); err != nil || got != "osm.adrift 2" || x.Objects != 2 {
		t.Errorf("a way and an area without nodes: %q of %d objects, %v", got, x.Objects, err)
	}
}

func notesText(x Extract) string {
	var words []string
	for _, n := range x.Notes {
		words = append(words, fmt.Sprintf("%s %v", n.Kind, n.Values["n"].N))
	}
	return strings.Join(words, ", ")
}

// Whatever the bytes, reading them ends with an extract or an error.
func FuzzRead(f *testing.F) {
	f.Add(demo.Extract())
	f.Add([]byte(`<osm><node id="1" lat="50" lon="10"><tag k="amenity" v="fuel"/></node><way id="2"><nd ref="1"/><tag k="amenity" v="fuel"/></way></osm>`))
	f.Add([]byte(`<osm><relation id="3"><center lat="1" lon="2"/><member type="way" ref="2" role="outer"/><tag k="tourism" v="camp_site"/></relation></osm>`))
	f.Add([]byte("BZh9"))
	f.Add([]byte("\x1f\x8b\x08"))
	f.Fuzz(func(t *testing.T, data []byte) {
		readBytes(data)
	})
}
