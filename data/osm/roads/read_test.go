package roads

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"ullage/data/osm/file"
	"ullage/data/osm/file/filetest"
	"ullage/geo/road"
	"ullage/geo/road/net"
)

// Spellings from the wiki pages named beside the rules.
func TestRoadTags(t *testing.T) {
	for _, tc := range []struct {
		tags string
		want string // access along/against, see accessText
	}{
		{"highway=residential", "yes/yes"},
		{"highway=footway", "-"},
		{"highway=pedestrian", "-"},
		{"highway=residential | area=yes", "-"},
		{"highway=primary | oneway=yes", "yes/no"},
		{"highway=primary | oneway=-1", "no/yes"},
		{"highway=primary | oneway=alternating", "yes/yes"},
		{"highway=primary | oneway=reversible", "-"},
		{"highway=primary | junction=roundabout", "yes/no"},
		{"highway=motorway", "yes/no"},
		{"highway=motorway | oneway=no", "yes/yes"},
		{"highway=motorway_link", "yes/no"},
		{"highway=trunk", "yes/yes"},
		{"highway=residential | access=no", "-"},
		{"highway=residential | access=private", "-"},
		{"highway=residential | access=no | motorhome=yes", "yes/yes"},
		{"highway=residential | access=no | motor_vehicle=destination", "guests/guests"},
		{"highway=residential | motor_vehicle=destination", "guests/guests"},
		{"highway=residential | vehicle=no | motor_vehicle=yes", "yes/yes"},
		{"highway=residential | motorcar=no", "-"},
		{"highway=residential | motor_vehicle:backward=no", "yes/no"},
		{"highway=residential | motorhome=no | motorcar=yes", "-"},
		{"highway=track", "guests/guests"},
		{"highway=track | motor_vehicle=yes", "yes/yes"},
		{"highway=track | motor_vehicle=forestry", "-"},
		{"highway=service | service=driveway", "guests/guests"},
		{"highway=service", "yes/yes"},
		{"highway=primary | hgv=no", "yes/yes light"},
		{"highway=primary | hgv=delivery", "yes/yes light"},
		{"highway=primary | hgv=destination", "yes/yes light-guests"},
		{"highway=primary | hgv=designated", "yes/yes"},
		{"highway=primary | hgv=unknown", "yes/yes"},
		{"highway=track | vehicle=agricultural;forestry", "-"},
		{"highway=residential | access=private; delivery", "-"},
		{"highway=residential | access=foot", "-"}, // ten roads of Delaware
		{"highway=residential | motor_vehicle=delivery;destination", "guests/guests"},
		{"highway=residential | motor_vehicle=no;yes", "yes/yes"},
		{"highway=residential | access=no | motor_vehicle=permissive", "yes/yes"},
		{"route=ferry", "-"},
		{"route=ferry | motor_vehicle=yes", "yes/yes gas"},
		{"highway=primary | tunnel=yes | hazmat=no", "yes/yes gas tunnel"},
		{"highway=primary | tunnel=yes | tunnel:category=E", "yes/yes gas tunnel"},
		{"highway=primary | tunnel=culvert", "yes/yes"},
		{"highway=service | tunnel=building_passage", "yes/yes tunnel"},
		{"highway=primary | toll=yes | bridge=yes", "yes/yes toll bridge"},
		{"highway=unclassified | surface=gravel", "yes/yes unpaved"},
		{"highway=primary | motor_vehicle:conditional=no @ (Nov-Mar)", "yes/yes caution"},
	} {
		x := &surveyor{}
		raw, ok := x.roadOf(file.Way{Tags: filetest.Tags(tc.tags)})
		got := "-"
		if ok {
			got = accessText(raw.road)
		}
		if got != tc.want {
			t.Errorf("%s: %s, want %s", tc.tags, got, tc.want)
		}
	}
}

func accessText(r net.Road) string {
	words := []string{"yes", "guests", "no"}
	s := words[r.Access[0]] + "/" + words[r.Access[1]]
	if r.Heavy == net.Closed {
		s += " light"
	} else if r.Heavy == net.Guests {
		s += " light-guests"
	}
	for _, f := range []struct {
		flag net.Flags
		word string
	}{{net.GasRules, "gas"}, {net.Tunnel, "tunnel"}, {net.Toll, "toll"}, {net.Bridge, "bridge"}, {net.Unpaved, "unpaved"}, {net.Caution, "caution"}} {
		if r.Flags&f.flag != 0 {
			s += " " + f.word
		}
	}
	return s
}

func TestRoadLimits(t *testing.T) {
	for _, tc := range []struct {
		tags    string
		want    net.Limits
		unclear string
	}{
		{"maxheight=2.7", net.Limits{HeightCm: 270}, ""},
		{"maxheight=2.7 m", net.Limits{HeightCm: 270}, ""},
		{`maxheight=12'6"`, net.Limits{HeightCm: 381}, ""}, // 12.5 ft = 3.81 m
		{"maxheight=default", net.Limits{HeightCm: unlimited}, ""},
		{"maxheight=none", net.Limits{HeightCm: unlimited}, ""},
		{"maxheight=unsigned", net.Limits{}, ""}, // not known: said below a bridge or in a tunnel
		{"maxheight=no_indications | maxheight:physical=3.2", net.Limits{HeightCm: 320}, ""},
		{"maxgcweight=5", net.Limits{Mass10Kg: 500}, ""},
		{"maxheight=below_default", net.Limits{}, "maxheight=below_default"},
		{"maxheight=default | maxheight:physical=2.9", net.Limits{HeightCm: 290}, ""},
		{"maxheight=low bridge", net.Limits{}, "maxheight=low bridge"},
		{"maxwidth=2.1 | maxlength=7", net.Limits{WidthCm: 210, LengthCm: 700}, ""},
		{"maxweight=3.5", net.Limits{Mass10Kg: 350}, ""},
		{"maxweight=7000 lbs", net.Limits{Mass10Kg: 317}, ""}, // 3.175 t, rounded down
		{"maxaxleload=2.5 t", net.Limits{Axle10Kg: 250}, ""},
		{"maxaxleload=some", net.Limits{}, "maxaxleload=some"},
		{"maxweight=3.5 | maxweight:conditional=7.5 @ (delivery)", net.Limits{Mass10Kg: 350}, "maxweight:conditional=7.5 @ (delivery)"},
		{"maxweight:hgv=7.5", net.Limits{}, "maxweight:hgv=7.5"},
		{"maxheight:signed=no", net.Limits{}, ""},
		// What is said about the vehicle alone is a limit, what holds at times a caution.
		{"motor_vehicle:conditional=no @ (weight>3.5)", net.Limits{Mass10Kg: 350}, ""},
		{"access:conditional=no @ (height > 2.7 m); no @ (length>7)", net.Limits{HeightCm: 270, LengthCm: 700}, ""},
		{"maxheight=2.5 | vehicle:conditional=no @ (height>=3)", net.Limits{HeightCm: 250}, ""},
		{"vehicle:conditional=no @ (width>=2.5)", net.Limits{WidthCm: 249}, ""},
		{"hgv:conditional=no @ (weight>7.5)", net.Limits{Mass10Kg: 750}, ""},
		{"hgv:conditional=no @ (height>3)", net.Limits{}, "hgv:conditional=no @ (height>3)"},
		{"motor_vehicle:conditional=no @ (weight>3.5 AND Su)", net.Limits{}, "motor_vehicle:conditional=no @ (weight>3.5 AND Su)"},
		{"motor_vehicle:conditional=no @ (Nov-Mar; Dec); yes @ (delivery)", net.Limits{}, "motor_vehicle:conditional=no @ (Nov-Mar, Dec), yes @ (delivery)"},
		{"motor_vehicle:conditional=destination @ (weight>3.5)", net.Limits{}, "motor_vehicle:conditional=destination @ (weight>3.5)"},
	} {
		var r net.Road
		readLimits(filetest.Tags(tc.tags), &r)
		if r.Limits != tc.want || r.Unclear != tc.unclear || (r.Flags&net.Caution != 0) != (tc.unclear != "") {
			t.Errorf("%s: %+v %q %v, want %+v %q", tc.tags, r.Limits, r.Unclear, r.Flags, tc.want, tc.unclear)
		}
	}
}

func TestRoadSpeeds(t *testing.T) {
	for _, tc := range []struct {
		tags string
		want [2]float32
	}{
		{"maxspeed=50", [2]float32{50, 50}},
		{"maxspeed=30 mph", [2]float32{48.28032, 48.28032}}, // 30 × 1.609344
		{"maxspeed=30mph", [2]float32{48.28032, 48.28032}},
		{"maxspeed=50 km/h", [2]float32{50, 50}},
		{"maxspeed=none", [2]float32{}},
		{"maxspeed=signals", [2]float32{}},
		{"maxspeed=DE:urban", [2]float32{50, 50}},
		{"maxspeed=FR:rural", [2]float32{80, 80}},
		{"maxspeed=IT:motorway", [2]float32{130, 130}},
		{"maxspeed=XX:rural", [2]float32{80, 80}},
		{"maxspeed=DE:zone30", [2]float32{30, 30}},
		{"zone:maxspeed=DE:30", [2]float32{30, 30}},
		{"source:maxspeed=DE:zone:30", [2]float32{30, 30}},
		{"maxspeed=walk", [2]float32{7, 7}},
		{"maxspeed=80 | maxspeed:backward=60", [2]float32{80, 60}},
		{"maxspeed=80 | maxspeed:motorhome=70", [2]float32{70, 70}},
		{"maxspeed=50;30", [2]float32{30, 30}},
		{"maxspeed=fast", [2]float32{}},
		{"maxspeed=-5", [2]float32{}},
		{"maxspeed=NaN", [2]float32{}},
	} {
		tags := filetest.Tags(tc.tags)
		if got := [2]float32{speedOf(tags, "forward"), speedOf(tags, "backward")}; got != tc.want {
			t.Errorf("%s: %v, want %v", tc.tags, got, tc.want)
		}
	}
	for text, want := range map[string]float64{"25": 25, "0:25": 25, "01:05": 65, "1:05:30": 65, "PT1H5M": 65, "PT40M": 40, "": 0, "PT": 0, "soon": 0} {
		if got := minutesOf(text); got != want {
			t.Errorf("minutesOf(%q) = %v, want %v", text, got, want)
		}
	}
}

// A town drawn by hand. Node 5 is a bollard, 6 a gate, 7 a height restrictor; 99 is missing.
const smallTown = `<?xml version="1.0"?><osm version="0.6">
<node id="1" lat="46.000" lon="7.000"/><node id="2" lat="46.001" lon="7.000"/><node id="3" lat="46.002" lon="7.000"/>
<node id="4" lat="46.001" lon="7.001"/><node id="5" lat="46.0015" lon="7.000"><tag k="barrier" v="bollard"/></node>
<node id="6" lat="46.001" lon="7.0005"><tag k="barrier" v="gate"/></node>
<node id="7" lat="46.001" lon="6.9995"><tag k="barrier" v="height_restrictor"/><tag k="maxheight" v="2.1"/></node>
<node id="8" lat="46.001" lon="6.999"/><node id="9" lat="46.01" lon="7.1"/>
<way id="10"><nd ref="1"/><nd ref="2"/><tag k="highway" v="primary"/><tag k="ref" v="N 1"/><tag k="name" v="High Road"/></way>
<way id="11"><nd ref="2"/><nd ref="5"/><nd ref="3"/><tag k="highway" v="residential"/></way>
<way id="12"><nd ref="2"/><nd ref="6"/><nd ref="4"/><tag k="highway" v="service"/></way>
<way id="13"><nd ref="2"/><nd ref="7"/><nd ref="8"/><tag k="highway" v="service"/></way>
<way id="14"><nd ref="3"/><nd ref="99"/><nd ref="4"/><nd ref="1"/><tag k="highway" v="tertiary"/></way>
<way id="15"><nd ref="3"/><nd ref="9"/><tag k="route" v="ferry"/><tag k="motor_vehicle" v="yes"/><tag k="duration" v="00:30"/></way>
<way id="16"><nd ref="3"/><nd ref="8"/><tag k="highway" v="footway"/></way>
<relation id="20"><member type="way" ref="10" role="from"/><member type="node" ref="2" role="via"/><member type="way" ref="12" role="to"/>
 <tag k="type" v="restriction"/><tag k="restriction" v="no_right_turn"/></relation>
<relation id="21"><member type="way" ref="10" role="from"/><member type="node" ref="2" role="via"/><member type="way" ref="13" role="to"/>
 <tag k="type" v="restriction"/><tag k="restriction" v="no_left_turn"/><tag k="except" v="psv;motorcar"/></relation>
<relation id="22"><member type="way" ref="10" role="from"/><member type="way" ref="11" role="via"/><member type="way" ref="13" role="to"/>
 <tag k="type" v="restriction"/><tag k="restriction" v="no_u_turn"/></relation>
<relation id="23"><member type="way" ref="12" role="from"/><member type="node" ref="2" role="via"/><member type="way" ref="10" role="to"/>
 <tag k="type" v="restriction"/><tag k="restriction:hgv" v="only_left_turn"/></relation>
</osm>`

func TestReadRoadsSmallTown(t *testing.T) {
	in, err := Read(context.Background(), "town.osm", strings.NewReader(smallTown), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var ways []int64
	for _, w := range in.Ways {
		ways = append(ways, w.ID)
	}
	if want := []int64{10, 11, 12, 13, 14, 15}; !slices.Equal(ways, want) {
		t.Errorf("ways %v, want %v", ways, want)
	}
	if n := len(in.Ways[4].Nodes); n != 2 {
		t.Errorf("the way with a missing node has %d nodes in its one whole part, want 2", n)
	}
	if in.Ways[0].Road.Name != "N 1" {
		t.Errorf("name %q", in.Ways[0].Road.Name)
	}
	// 7,796 m by GeodSolve -i (46.002 7.0 46.01 7.1) in half an hour: 15.6 km/h.
	if kmh := in.Ways[5].Road.Kmh[0]; math.Abs(float64(kmh)-15.6) > 0.051 {
		t.Errorf("the ferry makes %v km/h", kmh)
	}
	if a := in.Turns; len(a) != 3 || a[0].From != 10 || a[0].To != 12 || a[0].Heavy || !slices.Equal(a[1].Over, []int64{11}) || !a[2].Heavy || !a[2].Only {
		t.Errorf("turns %+v", in.Turns)
	}
	if in.Omitted != (net.Omitted{net.LeavesData: 1}) {
		t.Errorf("omitted %v", in.Omitted)
	}
	n, err := net.Build(context.Background(), in)
	if err != nil {
		t.Fatal(err)
	}
	r, err := road.NewRouter(context.Background(), n, net.Vehicle{HeightM: 2.5}, road.Shortest)
	if err != nil {
		t.Fatal(err)
	}
	car, err := road.NewRouter(context.Background(), n, net.Vehicle{}, road.Shortest)
	if err != nil {
		t.Fatal(err)
	}
	go4 := func(r *road.Router, node int) bool {
		p := in.Nodes[node-1].Point
		_, ok := r.Query().Cost(car.Snap(in.Nodes[0].Point, 1), car.Snap(p, 1))
		return ok
	}
	for _, tc := range []struct {
		node         int
		high, anyone bool
		why          string
	}{
		{2, true, true, "the road"},
		{3, false, false, "beyond a bollard"},
		{8, false, true, "below a bar at 2.1 m"},
	} {
		if got := go4(r, tc.node); got != tc.high {
			t.Errorf("2.5 m high to node %d, %s: %v", tc.node, tc.why, got)
		}
		if got := go4(car, tc.node); got != tc.anyone {
			t.Errorf("a car to node %d, %s: %v", tc.node, tc.why, got)
		}
	}
}

func TestReadRoadsErrors(t *testing.T) {
	if _, err := Read(context.Background(), "x.osm", strings.NewReader("nothing"), Options{}); err == nil || !strings.Contains(err.Error(), "x.osm") {
		t.Errorf("error %v", err)
	}
	in, err := Read(context.Background(), "sample", strings.NewReader(`<osm><node id="1" lat="50" lon="10"/></osm>`), Options{})
	if err != nil || len(in.Ways) != 0 {
		t.Errorf("a file without roads: %d ways, %v", len(in.Ways), err)
	}
}

// Where two carriageways join a single road nobody turns from one into the other; a hairpin of a one-way road stays open.
func TestSharpTurns(t *testing.T) {
	const divided = `<osm version="0.6">
<node id="1" lat="46.0000" lon="7.01"/><node id="2" lat="46.0001" lon="7.00"/><node id="3" lat="46.0002" lon="7.01"/><node id="4" lat="46.0001" lon="6.99"/>
<node id="5" lat="46.1000" lon="7.01"/><node id="6" lat="46.1001" lon="7.00"/><node id="7" lat="46.1002" lon="7.01"/>
<way id="10"><nd ref="1"/><nd ref="2"/><tag k="highway" v="primary"/><tag k="oneway" v="yes"/></way>
<way id="11"><nd ref="3"/><nd ref="2"/><tag k="highway" v="primary"/><tag k="oneway" v="-1"/></way>
<way id="12"><nd ref="2"/><nd ref="4"/><tag k="highway" v="primary"/></way>
<way id="20"><nd ref="5"/><nd ref="6"/><tag k="highway" v="tertiary"/><tag k="oneway" v="yes"/></way>
<way id="21"><nd ref="6"/><nd ref="7"/><tag k="highway" v="tertiary"/><tag k="oneway" v="yes"/></way>
</osm>`
	in, err := Read(context.Background(), "divided.osm", strings.NewReader(divided), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(in.Turns) != 1 || in.Turns[0].From != 10 || in.Turns[0].To != 11 || in.Turns[0].Only {
		t.Errorf("turns %+v, want from 10 into 11 only", in.Turns)
	}
}

// FuzzReadRoads: any file gives roads from which a network is built, or an error.
func FuzzReadRoads(f *testing.F) {
	f.Add([]byte(smallTown))
	f.Fuzz(func(t *testing.T, data []byte) {
		in, err := Read(context.Background(), "fuzz", bytes.NewReader(data), Options{})
		if err != nil {
			return
		}
		n, err := net.Build(context.Background(), in)
		if err != nil {
			return
		}
		if _, err := road.NewRouter(context.Background(), n, net.Vehicle{HeightM: 3, MassT: 4}, road.Fastest); err != nil {
			t.Fatal(err)
		}
	})
}

// A railway bridge over a lane, by hand: the piece below is on its own and flagged. Not flagged: where a height is stated, a
// main road, a level crossing, and a bridge's own road.
func TestUnderBridge(t *testing.T) {
	const rails = `<osm version="0.6">
<node id="1" lat="46.000" lon="7.000"/><node id="2" lat="46.001" lon="7.000"/><node id="3" lat="46.002" lon="7.000"/><node id="4" lat="46.003" lon="7.000"/>
<node id="5" lat="46.0015" lon="6.999"/><node id="6" lat="46.0015" lon="7.009"/>
<node id="11" lat="46.000" lon="7.002"/><node id="12" lat="46.003" lon="7.002"/><node id="13" lat="46.000" lon="7.004"/><node id="14" lat="46.003" lon="7.004"/>
<node id="15" lat="46.000" lon="7.009"/>
<way id="1"><nd ref="5"/><nd ref="6"/><tag k="railway" v="rail"/><tag k="bridge" v="yes"/></way>
<way id="10"><nd ref="1"/><nd ref="2"/><nd ref="3"/><nd ref="4"/><tag k="highway" v="unclassified"/></way>
<way id="11"><nd ref="11"/><nd ref="12"/><tag k="highway" v="unclassified"/><tag k="maxheight" v="3.2"/></way>
<way id="12"><nd ref="13"/><nd ref="14"/><tag k="highway" v="primary"/></way>
<way id="13"><nd ref="15"/><nd ref="6"/><tag k="highway" v="residential"/></way>
</osm>`
	in, err := Read(context.Background(), "rails.osm", strings.NewReader(rails), Options{})
	if err != nil {
		t.Fatal(err)
	}
	got := ""
	for _, w := range in.Ways {
		got += fmt.Sprintf("%d:%d", w.ID, len(w.Nodes))
		if w.Road.Flags&net.Under != 0 {
			got += "under"
		}
		got += " "
	}
	if want := "10:2 10:2under 10:2 11:2 12:2 13:2 "; got != want {
		t.Errorf("ways %q, want %q", got, want)
	}
}
