package roads

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/data/osm/file/filetest"
	"ullage/geo/road"
	"ullage/geo/road/net"
)

// A crossing drawn by hand: from the south (way 1) to the west (way 2) is a left turn; the way round goes north (3) and back
// by 5; east (4) is a long dead end. %s holds the tags of a restriction from 1 to the way %d.
const crossing = `<osm version="0.6">
<node id="1" lat="46.000" lon="7.000"/><node id="2" lat="45.999" lon="7.000"/><node id="3" lat="46.000" lon="6.999"/>
<node id="4" lat="46.001" lon="7.000"/><node id="5" lat="46.000" lon="7.003"/><node id="6" lat="46.001" lon="6.999"/>
<way id="1"><nd ref="2"/><nd ref="1"/><tag k="highway" v="residential"/><tag k="ref" v="1"/></way>
<way id="2"><nd ref="1"/><nd ref="3"/><tag k="highway" v="residential"/><tag k="ref" v="2"/></way>
<way id="3"><nd ref="1"/><nd ref="4"/><tag k="highway" v="residential"/><tag k="ref" v="3"/></way>
<way id="4"><nd ref="1"/><nd ref="5"/><tag k="highway" v="residential"/><tag k="ref" v="4"/></way>
<way id="5"><nd ref="4"/><nd ref="6"/><nd ref="3"/><tag k="highway" v="residential"/><tag k="ref" v="5"/></way>
<relation id="9"><member type="way" ref="1" role="from"/><member type="node" ref="1" role="via"/><member type="way" ref="%d" role="to"/>
<tag k="type" v="restriction"/>%s</relation></osm>`

// Kinds and exceptions from Relation:restriction of wiki.openstreetmap.org.
func TestReadTurns(t *testing.T) {
	for _, tc := range []struct {
		tags  string
		to    int
		massT float64
		want  string
	}{
		{"restriction=no_left_turn", 2, 3.5, "1 3 5"},
		{"restriction=no_left_turn", 3, 3.5, "1 2"}, // of another way
		{"restriction=only_straight_on", 3, 3.5, "1 3 5"},
		{"restriction=only_left_turn", 2, 3.5, "1 2"},
		{"restriction=no_left_turn | except=bicycle;motorcar", 2, 3.5, "1 2"},
		{"restriction=no_left_turn | except=psv", 2, 3.5, "1 3 5"},
		{"restriction:hgv=no_left_turn", 2, 3.5, "1 2"},
		{"restriction:hgv=no_left_turn", 2, 4.2, "1 3 5"},
		{"restriction:conditional=no_left_turn @ (Mo-Fr 07:00-09:00)", 2, 3.5, "1 2"}, // with a caution, see below
		{"restriction:conditional=no_left_turn @ (weight>3.5)", 2, 3.5, "1 2"},
		{"restriction:conditional=no_left_turn @ (weight > 3.5)", 2, 4.2, "1 3 5"},
		{"restriction:conditional=no_left_turn @ hgv", 2, 4.2, "1 3 5"},
		{"restriction=no_left_turn | restriction:conditional=none @ (Su)", 2, 3.5, "1 3 5"},
		{"restriction:bicycle=no_left_turn", 2, 3.5, "1 2"},
		{"restriction=give_way", 2, 3.5, "1 2"},
	} {
		// From the middle of way 1 to the middle of way 2.
		names, _ := driven(t, fmt.Sprintf(crossing, tc.to, filetest.XML(tc.tags)), tc.massT, orb.Point{7, 45.9995}, orb.Point{6.9995, 46})
		if got := strings.TrimSuffix(names, " 2"); got != strings.TrimSuffix(tc.want, " 2") {
			t.Errorf("%s to way %d, %v t: by %s, want %s", tc.tags, tc.to, tc.massT, got, tc.want)
		}
	}
}

// driven returns the names of the roads from one point to another and what is to mind on them.
func driven(t *testing.T, file string, massT float64, from, to orb.Point) (names string, notes []road.Note) {
	t.Helper()
	in, err := Read(context.Background(), "crossing.osm", strings.NewReader(file), Options{})
	if err != nil {
		t.Fatal(err)
	}
	n, err := net.Build(context.Background(), in)
	if err != nil {
		t.Fatal(err)
	}
	r, err := road.NewRouter(context.Background(), n, net.Vehicle{MassT: massT}, road.Shortest)
	if err != nil {
		t.Fatal(err)
	}
	path, err := r.Query().Route(r.Snap(from, 10), r.Snap(to, 10))
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, s := range path.Steps {
		if name := n.Road(s.Edge()).Name; len(list) == 0 || list[len(list)-1] != name {
			list = append(list, name)
		}
	}
	return strings.Join(list, " "), r.Notes(path)
}

// What holds at times only is allowed, and told where it is done.
func TestTurnsAtTimes(t *testing.T) {
	for _, tc := range []struct {
		tags string
		to   int
		want string
	}{
		{"restriction:conditional=no_left_turn @ (Mo-Fr 07:00-09:00)", 2, "no_left_turn @ (Mo-Fr 07:00-09:00)"},
		{"restriction:conditional=no_left_turn @ (Mo-Fr 07:00-09:00; Sa 08:00-12:00)", 2,
			"no_left_turn @ (Mo-Fr 07:00-09:00; Sa 08:00-12:00)"},
		{"restriction:conditional=only_straight_on @ (Su)", 3, "only_straight_on @ (Su)"},
		{"restriction:conditional=only_left_turn @ (Su)", 2, ""},
		{"restriction:conditional=no_straight_on @ (Su)", 3, ""}, // another turn
		{"restriction:hgv:conditional=no_left_turn @ (Su)", 2, ""},
	} {
		_, notes := driven(t, fmt.Sprintf(crossing, tc.to, filetest.XML(tc.tags)), 3.5, orb.Point{7, 45.9995}, orb.Point{6.9995, 46})
		got := ""
		for _, n := range notes {
			got += n.Tags
			if n.Kind != road.TurnAtTimes || n.Road != "2" || n.Point != (orb.Point{7, 46}) || math.Abs(n.AlongM-55.6) > 0.1 { // 0.0005° of latitude
				t.Errorf("%s: %+v", tc.tags, n)
			}
		}
		if got != tc.want {
			t.Errorf("%s to way %d: told %q, want %q", tc.tags, tc.to, got, tc.want)
		}
	}
}

// A road of two carriageways, 1 to the east and 2 to the west, joined by the ways 3 and 4 end to end in the middle and by a loop
// far to the east (5); a side road (6) comes to the middle, from so far that nobody turns round at its end. %s holds members between and tags.
const twoCarriageways = `<osm version="0.6">
<node id="1" lat="46.0000" lon="7.000"/><node id="2" lat="46.0000" lon="7.001"/><node id="3" lat="46.0000" lon="7.010"/>
<node id="4" lat="46.0004" lon="7.000"/><node id="5" lat="46.0004" lon="7.001"/><node id="6" lat="46.0004" lon="7.010"/>
<node id="7" lat="46.0002" lon="7.001"/><node id="8" lat="45.9800" lon="7.001"/>
<way id="1"><nd ref="1"/><nd ref="2"/><tag k="highway" v="primary"/><tag k="oneway" v="yes"/><tag k="ref" v="1"/></way>
<way id="11"><nd ref="2"/><nd ref="3"/><tag k="highway" v="primary"/><tag k="oneway" v="yes"/><tag k="ref" v="1e"/></way>
<way id="12"><nd ref="6"/><nd ref="5"/><tag k="highway" v="primary"/><tag k="oneway" v="yes"/><tag k="ref" v="2e"/></way>
<way id="2"><nd ref="5"/><nd ref="4"/><tag k="highway" v="primary"/><tag k="oneway" v="yes"/><tag k="ref" v="2"/></way>
<way id="3"><nd ref="2"/><nd ref="7"/><tag k="highway" v="residential"/><tag k="ref" v="3"/></way>
<way id="4"><nd ref="5"/><nd ref="7"/><tag k="highway" v="residential"/><tag k="ref" v="4"/></way>
<way id="5"><nd ref="3"/><nd ref="6"/><tag k="highway" v="residential"/><tag k="ref" v="5"/></way>
<way id="6"><nd ref="8"/><nd ref="7"/><tag k="highway" v="residential"/><tag k="ref" v="6"/></way>
<relation id="9"><member type="way" ref="1" role="from"/>%s<member type="way" ref="2" role="to"/>
<tag k="type" v="restriction"/>%s</relation></osm>`

// A restriction over ways between holds for who comes by its first way only.
func TestReadTurnsOverWays(t *testing.T) {
	over := `<member type="way" ref="3" role="via"/><member type="way" ref="4" role="via"/>`
	west, side := orb.Point{7.0002, 46.0000}, orb.Point{7.001, 45.999}
	for _, tc := range []struct {
		between, tags string
		from          orb.Point
		massT         float64
		want          string
	}{
		{over, "restriction=give_way", west, 3.5, "1 3 4 2"},
		{over, "restriction=no_u_turn", west, 3.5, "1 1e 5 2e 2"},
		{over, "restriction=no_u_turn", side, 3.5, "6 4 2"},
		{over, "restriction:hgv=no_u_turn", west, 3.5, "1 3 4 2"},
		{over, "restriction:hgv=no_u_turn", west, 4.2, "1 1e 5 2e 2"},
		{over, "restriction=no_u_turn | except=motorcar", west, 3.5, "1 3 4 2"},
		{over, "restriction:conditional=no_u_turn @ (Su)", west, 3.5, "1 3 4 2"},
		{over, "restriction=only_u_turn", west, 3.5, "1 3 4 2"},
		// A way that does not begin where the first one ends fits nothing.
		{`<member type="way" ref="5" role="via"/>`, "restriction=no_u_turn", west, 3.5, "1 3 4 2"},
	} {
		got, _ := driven(t, fmt.Sprintf(twoCarriageways, tc.between, filetest.XML(tc.tags)), tc.massT, tc.from, orb.Point{7.0002, 46.0004})
		if got != tc.want {
			t.Errorf("%s from %v, %v t: by %s, want %s", tc.tags, tc.from, tc.massT, got, tc.want)
		}
	}
	_, notes := driven(t, fmt.Sprintf(twoCarriageways, over, filetest.XML("restriction:conditional=no_u_turn @ (Su)")), 3.5, west, orb.Point{7.0002, 46.0004})
	if len(notes) != 1 || notes[0].Kind != road.TurnAtTimes || notes[0].Tags != "no_u_turn @ (Su)" || notes[0].Road != "2" {
		t.Errorf("notes %+v", notes)
	}
}
