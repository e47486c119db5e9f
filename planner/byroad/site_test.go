package byroad_test

import (
	"bytes"
	"context"
	"math"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/data/demo"
	"ullage/data/osm"
	"ullage/data/osm/roads"
	"ullage/geo/road/net"
	"ullage/planner/trip"
	"ullage/planner/trip/triptest"
)

// On the equator: Main Road from west to east; a site north of it, whose drive leaves Main Road at 0.11° and enters by the
// fence's south side. Back Lane ends behind the fence, near the dump station, and is 2 km longer to get to. DRIVE is
// what is drawn of the drive.
const fencedSite = `<osm version="0.6">
<node id="1" lat="0" lon="0"/><node id="2" lat="0" lon="0.1"/><node id="3" lat="0" lon="0.11"/><node id="4" lat="0" lon="0.2"/>
<node id="5" lat="0.0004" lon="0.11"/><node id="6" lat="0.0015" lon="0.11"/>
<node id="7" lat="0.0035" lon="0.1"/><node id="8" lat="0.0035" lon="0.11"/>
<node id="11" lat="0.0004" lon="0.109"/><node id="12" lat="0.0004" lon="0.111"/><node id="13" lat="0.0032" lon="0.111"/><node id="14" lat="0.0032" lon="0.109"/>
<node id="20" lat="0.0031" lon="0.11"><tag k="amenity" v="sanitary_dump_station"/></node>
<way id="100"><nd ref="1"/><nd ref="2"/><nd ref="3"/><nd ref="4"/><tag k="highway" v="primary"/><tag k="name" v="Main Road"/></way>
<way id="101"><nd ref="2"/><nd ref="7"/><nd ref="8"/><tag k="highway" v="unclassified"/><tag k="name" v="Back Lane"/></way>
<way id="200"><nd ref="11"/><nd ref="5"/><nd ref="12"/><nd ref="13"/><nd ref="14"/><nd ref="11"/><tag k="tourism" v="caravan_site"/></way>
DRIVE</osm>`

const drive = `<way id="102"><nd ref="3"/><nd ref="5"/><nd ref="6"/><tag k="highway" v="service"/><tag k="name" v="the drive"/>LIMIT</way>`

// A site and the dump station inside of its fence are called at by the drive, not over the fence from the lane behind it.
func TestSiteByItsDrive(t *testing.T) {
	const fence = `<node id="5" lat="0.0004" lon="0.11"/>`
	withGate := strings.Replace(fencedSite, fence, strings.Replace(fence, "/>", `><tag k="barrier" v="gate"/></node>`, 1), 1)
	withDrive := func(limit string) string {
		return strings.Replace(fencedSite, "DRIVE", strings.Replace(drive, "LIMIT", limit, 1), 1)
	}
	for _, tc := range []struct {
		name, text string
		km         float64 // where the place lies along the route: 0.1° or 0.11° of the equator, WGS84
		road       string  // from which one drives in
		closed     string
	}{
		{"drive", withDrive(""), 12.245, "the drive", ""},
		{"gate, and no drive", strings.Replace(withGate, "DRIVE", "", 1), 12.245, "Main Road", ""},
		{"nothing but a fence", strings.Replace(fencedSite, "DRIVE", "", 1), 11.132, "Back Lane", ""},
		{"low drive", withDrive(`<tag k="maxheight" v="2.2"/>`), 0, "", "road=the drive why=(road.bar.too_high has=3.05m limit=2.20m)"},
	} {
		read := func() *bytes.Reader { return bytes.NewReader([]byte(tc.text)) }
		x, err := osm.Read(context.Background(), tc.name, read(), osm.Options{NoBackdrop: true})
		if err != nil || len(x.Places) != 2 {
			t.Fatal(x.Places, err)
		}
		in, err := roads.Read(context.Background(), tc.name, read(), roads.Options{})
		if err != nil {
			t.Fatal(err)
		}
		network, err := net.Build(context.Background(), in)
		if err != nil {
			t.Fatal(err)
		}
		tr := demo.Trip()
		tr.Route, tr.CorridorKm, tr.Vehicle.HeightM = orb.LineString{{0, 0}, {0.2, 0}}, 5, 3.05
		roads := guide(t, network).Trip(context.Background())
		if _, err := roads.Course(tr, 22.264); err != nil {
			t.Fatal(err)
		}
		ways, err := roads.Ways([]*trip.Place{&x.Places[0], &x.Places[1]})
		if err != nil || len(ways) != 2 {
			t.Fatalf("%s: ways %+v, %v, want one to each place", tc.name, ways, err)
		}
		for _, w := range ways {
			if got := triptest.Line(w.Closed); tc.closed != "" || got != "" {
				if tc.closed == "" || !strings.HasSuffix(got, tc.closed) {
					t.Errorf("%s: %s closed %q, want %q", tc.name, x.Places[w.Place].ID, got, tc.closed)
				}
			} else if w.Entry.Road != tc.road {
				t.Errorf("%s: one drives in to %s from %q, want %q", tc.name, x.Places[w.Place].ID, w.Entry.Road, tc.road)
			} else if km := w.LeaveKm + w.ThereKm - w.Km/2; math.Abs(km-tc.km) > 0.01 {
				t.Errorf("%s: to %s at km %.3f, want %.3f", tc.name, x.Places[w.Place].ID, km, tc.km)
			}
		}
	}
}
