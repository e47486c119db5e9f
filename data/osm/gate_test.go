package osm

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"ullage/data/osm/file/filetest"

	"github.com/paulmach/orb"
)

// An outline of gates alone is a fault of the data, or a trap: some are kept.
func TestTooManyGates(t *testing.T) {
	var nodes, refs strings.Builder
	for i := range 2000 {
		a := float64(i) / 2000 * 2 * math.Pi
		fmt.Fprintf(&nodes, `<node id="%d" lat="%f" lon="%f">`+filetest.XML("barrier=gate")+`</node>`, i+1, math.Sin(a), math.Cos(a))
		fmt.Fprintf(&refs, `<nd ref="%d"/>`, i+1)
	}
	x, err := readBytes([]byte(`<osm>` + nodes.String() + `<way id="1">` + refs.String() + `<nd ref="1"/>` + filetest.XML("tourism=camp_site") + `</way></osm>`))
	if err != nil || len(x.Places) != 1 || len(x.Places[0].Gates) != mostGates {
		t.Errorf("%v: %d places, want one with %d gates", err, len(x.Places), mostGates)
	}
}

// A gate in the outline of a hole is no way in to the site around it, but to the
// site that lies in the hole.
func TestGateOfAHole(t *testing.T) {
	ring := func(id, refs string) string {
		s := `<way id="` + id + `">`
		for _, r := range strings.Fields(refs) {
			s += `<nd ref="` + r + `"/>`
		}
		return s + `</way>`
	}
	text := `<osm><node id="1" lat="0" lon="0"/><node id="2" lat="0" lon="9"/><node id="3" lat="9" lon="9"/>` +
		`<node id="4" lat="5" lon="6">` + filetest.XML("barrier=gate") + `</node><node id="5" lat="5" lon="7"/><node id="6" lat="6" lon="7"/>` +
		ring("7", "1 2 3 1") + ring("8", "4 5 6 4") +
		`<relation id="1"><member type="way" ref="7" role="outer"/><member type="way" ref="8" role="inner"/>` + filetest.XML("type=multipolygon | tourism=camp_site") + `</relation>` +
		`<relation id="2"><member type="way" ref="8" role="outer"/>` + filetest.XML("type=multipolygon | tourism=caravan_site") + `</relation></osm>`
	x, err := readBytes([]byte(text))
	if err != nil || len(x.Places) != 2 || len(x.Places[0].Gates) != 0 || len(x.Places[1].Gates) != 1 {
		t.Errorf("%+v, %v", x.Places, err)
	}
}

// Gates of a square site with a node in the middle of its south side (5), drawn as a way, as a building, as two halves and as
// a site relation.
func TestGates(t *testing.T) {
	corner := `<node id="1" lat="0" lon="0"/><node id="2" lat="0" lon="2"/><node id="3" lat="2" lon="2"/><node id="4" lat="2" lon="0"/>`
	gate := func(tags string) string { return `<node id="5" lat="0" lon="1">` + filetest.XML(tags) + `</node>` }
	refs := func(ids string) (s string) {
		for _, id := range strings.Fields(ids) {
			s += `<nd ref="` + id + `"/>`
		}
		return s
	}
	ring := func(tags string) string { return `<way id="9">` + refs("1 5 2 3 4 1") + filetest.XML(tags) + `</way>` }
	halves := `<way id="7">` + refs("1 5 2") + `</way><way id="8">` + refs("2 3 4 1") + `</way>`
	relation := func(typ, members string) string {
		return `<relation id="9"><member type="way" ref="7" role="outer"/><member type="way" ref="8" role="outer"/>` + members +
			filetest.XML("type="+typ+" | tourism=caravan_site") + `</relation>`
	}
	const site = "tourism=camp_site"
	for _, tc := range []struct {
		name, text string
		want       []orb.Point
	}{
		{"gate", gate("barrier=gate") + ring(site), []orb.Point{{1, 0}}},
		{"lift gate for guests", gate("barrier=lift_gate | access=customers") + ring(site), []orb.Point{{1, 0}}},
		{"gap in the fence", gate("barrier=entrance") + ring(site), []orb.Point{{1, 0}}},
		{"main entrance", gate("entrance=main") + ring(site), []orb.Point{{1, 0}}},
		{"for the staff", gate("barrier=gate | access=private") + ring(site), nil},
		{"on foot", gate("barrier=gate | motor_vehicle=no | foot=yes") + ring(site), nil},
		{"bollard", gate("barrier=bollard") + ring(site), nil},
		{"way out", gate("entrance=exit") + ring(site), nil},
		{"door of a building", gate("entrance=main") + ring("amenity=fuel | building=yes"), nil},
		{"gate of a building's yard", gate("barrier=gate") + ring("amenity=fuel | building=yes"), []orb.Point{{1, 0}}},
		{"two", gate("barrier=gate") + `<node id="6" lat="2" lon="1">` + filetest.XML("barrier=gate") + `</node>` +
			`<way id="9">` + refs("1 5 2 3 6 4 1") + filetest.XML(site) + `</way>`, []orb.Point{{1, 0}, {1, 2}}},
		{"the ring begins at it", `<node id="5" lat="0" lon="1">` + filetest.XML("barrier=gate") + `</node><way id="9">` + refs("5 2 3 4 1 5") + filetest.XML(site) + `</way>`,
			[]orb.Point{{1, 0}}},
		{"not on the outline", gate("barrier=gate") + `<way id="9">` + refs("1 2 3 4 1") + filetest.XML(site) + `</way>`, nil},
		{"outline of two ways", gate("barrier=gate") + halves + relation("multipolygon", ""), []orb.Point{{1, 0}}},
		// Source of the role: Relations/Proposed/Site of wiki.openstreetmap.org, "node(s) on the perimeter".
		{"entrance of a site", gate("barrier=gate") + `<node id="6" lat="2" lon="1"/>` + halves + relation("site", `<member type="node" ref="6" role="entrance"/>`),
			[]orb.Point{{1, 2}}},
		{"guidepost of a site", gate("barrier=gate") + `<node id="6" lat="2" lon="1"/>` + halves + relation("site", `<member type="node" ref="6" role="guidepost"/>`),
			[]orb.Point{{1, 0}}},
		{"entrance that the file does not hold", gate("barrier=gate") + halves + relation("site", `<member type="node" ref="6" role="entrance"/>`), []orb.Point{{1, 0}}},
	} {
		x, err := readBytes([]byte("<osm>" + corner + tc.text + "</osm>"))
		if err != nil {
			t.Fatal(tc.name, err)
		}
		if len(x.Places) != 1 || !slices.Equal(x.Places[0].Gates, tc.want) {
			t.Errorf("%s: %+v, want gates %v", tc.name, x.Places, tc.want)
		} else if len(x.Places[0].Outline) < 5 || x.Objects != 1 {
			t.Errorf("%s: outline %v, %d objects", tc.name, x.Places[0].Outline, x.Objects)
		}
	}
}
