package osm

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/geo/road"
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
		{"restriction:conditional=no_left_turn @ (Mo-Fr 07:00-09:00)", 2, 3.5, "1 3 5"},
		{"restriction:bicycle=no_left_turn", 2, 3.5, "1 2"},
		{"restriction=give_way", 2, 3.5, "1 2"},
	} {
		text := ""
		for part := range strings.SplitSeq(tc.tags, " | ") {
			k, v, _ := strings.Cut(part, "=")
			text += fmt.Sprintf(`<tag k="%s" v="%s"/>`, k, v)
		}
		in, err := ReadRoads(context.Background(), "crossing.osm", strings.NewReader(fmt.Sprintf(crossing, tc.to, text)), RoadOptions{})
		if err != nil {
			t.Fatal(err)
		}
		n, err := road.Build(context.Background(), in)
		if err != nil {
			t.Fatal(err)
		}
		r, err := n.Router(context.Background(), road.Vehicle{MassT: tc.massT}, road.Shortest)
		if err != nil {
			t.Fatal(err)
		}
		// From the middle of way 1 to the middle of way 2.
		path, err := r.Query().Route(r.Snap(orb.Point{7, 45.9995}, 10), r.Snap(orb.Point{6.9995, 46}, 10))
		if err != nil {
			t.Fatal(err)
		}
		var names []string
		for _, s := range path.Steps {
			if name := n.Road(s.Edge()).Name; len(names) == 0 || names[len(names)-1] != name {
				names = append(names, name)
			}
		}
		if got := strings.TrimSuffix(strings.Join(names, " "), " 2"); got != strings.TrimSuffix(tc.want, " 2") {
			t.Errorf("%s to way %d, %v t: by %s, want %s", tc.tags, tc.to, tc.massT, got, tc.want)
		}
	}
}
