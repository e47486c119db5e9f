package road

import (
	"math"
	"strings"
	"testing"

	"github.com/paulmach/orb"
)

func TestCloses(t *testing.T) {
	van := Vehicle{HeightM: 2.65, WidthM: 2.05, LengthM: 6, MassT: 3.5, AxleT: 2.1, MarginM: 0.1}
	heavy := Vehicle{HeightM: 3.4, WidthM: 2.35, LengthM: 8.8, MassT: 7.5, AxleT: 4.8, MarginM: 0.1}
	for _, tc := range []struct {
		name string
		v    Vehicle
		r    Road
		want string // a part of the reason; "" for open
	}{
		{"nothing stated", heavy, Road{}, ""},
		{"too low", heavy, Road{Limits: Limits{HeightCm: 270}}, "height limit 2.70 m, the vehicle has 3.40 m"},
		{"just high enough with the margin", van, Road{Limits: Limits{HeightCm: 275}}, ""},
		{"within the margin", van, Road{Limits: Limits{HeightCm: 270}}, "keeps 0.10 m free"},
		{"high enough", van, Road{Limits: Limits{HeightCm: 300}}, ""},
		{"none stated to be needed", heavy, Road{Limits: Limits{HeightCm: 65535}}, ""},
		{"too narrow", van, Road{Limits: Limits{WidthCm: 210}}, "width limit"},
		{"length equal to the limit", van, Road{Limits: Limits{LengthCm: 600}}, ""},
		{"mass equal to the limit", van, Road{Limits: Limits{Mass10Kg: 350}}, ""},
		{"too heavy", heavy, Road{Limits: Limits{Mass10Kg: 350}}, "mass limit 3.50 t"},
		{"axle too heavy", heavy, Road{Limits: Limits{Axle10Kg: 400}}, "axle load"},
		{"a size that is not stated fits", Vehicle{}, Road{Limits: Limits{HeightCm: 200, WidthCm: 150, LengthCm: 300, Mass10Kg: 100, Axle10Kg: 50}}, ""},
		{"closed to goods vehicles, light", van, Road{Heavy: Closed}, ""},
		{"closed to goods vehicles, heavy", heavy, Road{Heavy: Closed}, "heavy"},
		{"one-way", van, Road{Access: [2]Access{Closed, Open}}, "one-way"},
		{"guests may", van, Road{Access: [2]Access{Guests, Guests}}, ""},
		{"ferry not wanted", Vehicle{NoFerry: true}, Road{Class: Ferry}, "ferry"},
		{"toll not wanted", Vehicle{NoToll: true}, Road{Flags: Toll}, "toll"},
		{"unpaved not wanted", Vehicle{NoUnpaved: true}, Road{Flags: Unpaved}, "unpaved"},
		{"no limit is taken for unknown", van, Road{Flags: Tunnel | Caution, Unclear: "maxheight=below_default"}, ""},
	} {
		got := string(tc.v.Closes(&tc.r, 0))
		if (got == "") != (tc.want == "") || !strings.Contains(got, tc.want) {
			t.Errorf("%s: %q, want %q", tc.name, got, tc.want)
		}
	}
}

func TestKmh(t *testing.T) {
	camper := Vehicle{TopKmh: MotorhomeTopKmh, Factor: MotorhomeFactor}
	for _, tc := range []struct {
		name string
		v    Vehicle
		r    Road
		want float64
	}{
		{"class", Vehicle{}, Road{Class: Primary}, 65},
		{"limit below the class", Vehicle{}, Road{Class: Primary, Kmh: [2]float32{50, 50}}, 50},
		{"with the factor", camper, Road{Class: Primary, Kmh: [2]float32{50, 50}}, 45},
		{"limit far above the class", camper, Road{Class: Tertiary, Kmh: [2]float32{90, 90}}, 54},
		{"limit little above the class", camper, Road{Class: Residential, Kmh: [2]float32{30, 30}}, 25},
		{"motorway without limit", camper, Road{Class: Motorway}, 90},
		{"top", Vehicle{TopKmh: 80}, Road{Class: Motorway}, 80},
		{"unpaved", camper, Road{Class: Tertiary, Flags: Unpaved}, 30},
		{"bad", camper, Road{Class: Tertiary, Flags: SlowWay}, 15},
		{"ferry by its time table", camper, Road{Class: Ferry, Kmh: [2]float32{15.6, 15.6}}, 15.6},
		{"ferry", camper, Road{Class: Ferry}, 20},
	} {
		if got := tc.v.Kmh(&tc.r, 0); math.Abs(got-tc.want) > 1e-5 {
			t.Errorf("%s: %v, want %v", tc.name, got, tc.want)
		}
	}
}

// Two ways from west to east: a short one under a bridge of 2.7 m and through a tunnel of unknown height, a long one without.
func TestLowBridge(t *testing.T) {
	p := func(x, y float64) Node { return Node{Point: orb.Point{7 + x/100, 46 + y/100}} }
	in := Input{
		Nodes: []Node{p(0, 0), p(1, 0), p(2, 0), p(3, 0), p(1.5, 2), p(3.5, 0)},
		Ways: []Way{
			{ID: 1, Nodes: []int32{0, 1}, Road: Road{Class: Primary, Name: "W"}},
			{ID: 2, Nodes: []int32{1, 2}, Road: Road{Class: Primary, Name: "Low", Limits: Limits{HeightCm: 270}}},
			{ID: 3, Nodes: []int32{2, 3}, Road: Road{Class: Primary, Name: "Tunnel", Flags: Tunnel}},
			{ID: 4, Nodes: []int32{1, 4, 2}, Road: Road{Class: Secondary, Name: "Round", Flags: Toll}},
			{ID: 5, Nodes: []int32{3, 5}, Road: Road{Class: Ferry, Name: "Boat", Flags: GasRules}},
		},
	}
	n := built(t, in)
	high := routed(t, n, Vehicle{HeightM: 3.05, MarginM: 0.1}, Fastest)
	car := routed(t, n, Vehicle{}, Fastest)
	from, to := high.Snap(in.Nodes[0].Point, 50), high.Snap(in.Nodes[5].Point, 50)
	path, err := high.Query().Route(from, to)
	if err != nil {
		t.Fatal(err)
	}
	free, err := car.Query().Route(from, to)
	if err != nil || free.LengthM >= path.LengthM {
		t.Fatal(free.LengthM, path.LengthM, err)
	}
	why := high.Avoided(free)
	if len(why) != 1 || why[0].Road != "Low" || !strings.Contains(why[0].Text, "2.70 m") || why[0].Point != n.At(high.Snap(in.Nodes[1].Point, 5)) {
		t.Errorf("avoided %+v", why)
	}
	if list := high.Avoided(path); len(list) != 0 {
		t.Errorf("the path found uses %+v", list)
	}
	var kinds []NoteKind
	for _, x := range high.Notes(path) {
		kinds = append(kinds, x.Kind)
	}
	want := []NoteKind{TollNote, UnknownLimit, FerryNote, GasNote}
	if len(kinds) != len(want) {
		t.Fatalf("notes %v, want %v", kinds, want)
	}
	for i := range want {
		if kinds[i] != want[i] {
			t.Errorf("notes %v, want %v", kinds, want)
		}
	}
	line := n.Line(path)
	if line[0] != in.Nodes[0].Point || line[len(line)-1] != in.Nodes[5].Point || len(line) != 6 {
		t.Errorf("line %v", line)
	}
	if list, err := high.Query().Route(from, Spot{}); err != ErrNoRoad {
		t.Errorf("%v %v", list, err)
	}
	if _, err := n.Router(t.Context(), Vehicle{HeightM: -1}, Fastest); err == nil {
		t.Error("a height of -1 m was taken")
	}
}

func TestSnap(t *testing.T) {
	p := func(xM, yM float64) Node { return Node{Point: orb.Point{7 + xM/77243, 46 + yM/111195}} }
	in := Input{
		// A motorway, a service road 30 m beside it, a tunnel below the place, a closed way, a lane not joined with the rest.
		Nodes: []Node{p(0, 0), p(1000, 0), p(0, 30), p(1000, 30), p(500, 10), p(500, 40), p(400, 20), p(600, 20), p(480, 16), p(520, 16)},
		Ways: []Way{
			{ID: 1, Nodes: []int32{0, 1}, Road: Road{Class: Motorway, Name: "M"}},
			{ID: 2, Nodes: []int32{2, 3}, Road: Road{Class: Service, Name: "S"}},
			{ID: 3, Nodes: []int32{4, 5}, Road: Road{Class: Primary, Name: "T", Flags: Tunnel}},
			{ID: 4, Nodes: []int32{6, 7}, Road: Road{Class: Service, Name: "low", Limits: Limits{HeightCm: 200}}},
			{ID: 5, Nodes: []int32{8, 9}, Road: Road{Class: Service, Name: "apart"}},
			{ID: 6, Nodes: []int32{0, 2}, Road: Road{Class: Service, Name: "a"}},
			{ID: 7, Nodes: []int32{1, 3}, Road: Road{Class: Service, Name: "b"}},
		},
	}
	n := built(t, in)
	r := routed(t, n, Vehicle{HeightM: 3}, Fastest)
	car := routed(t, n, Vehicle{}, Fastest)
	at := p(500, 12).Point
	name := func(s Spot) string {
		if !s.OK {
			return "-"
		}
		return n.Road(s.Edge).Name
	}
	for _, tc := range []struct {
		what string
		got  Spot
		want string
	}{
		{"a click takes the nearest that is joined with the rest", car.Snap(at, 100), "M"},
		{"a place takes the road that it is entered from", r.SnapSite(Site{Point: at}, 100), "S"},
		{"with a low vehicle the low road is apart", car.SnapSite(Site{Point: at}, 100), "S"},
		{"nothing within reach", r.SnapSite(Site{Point: p(500, 5000).Point}, 1000), "-"},
		{"far, but within reach", r.SnapSite(Site{Point: p(500, 5000).Point}, 6000), "S"},
		{"not a place on earth", r.Snap(orb.Point{math.NaN(), 0}, 100), "-"},
		{"no reach", r.Snap(at, 0), "-"},
	} {
		if name(tc.got) != tc.want {
			t.Errorf("%s: %s, want %s", tc.what, name(tc.got), tc.want)
		}
	}
	// 18 m north of the place.
	if s := r.SnapSite(Site{Point: at}, 100); math.Abs(s.OffM-18) > 0.1 || math.Abs(float64(s.Cm)-50_000) > 200 {
		t.Errorf("%+v, want 18 m off, 500 m along", s)
	}
}

// A street that only goods vehicles with business there may use is a way like any other for a light vehicle. A heavy one goes
// round it, and uses it where its way ends there.
func TestHeavyGuests(t *testing.T) {
	p := func(x, y float64) Node { return Node{Point: orb.Point{7 + x/100, 46 + y/100}} }
	in := Input{
		Nodes: []Node{p(0, 0), p(1, 0), p(2, 0), p(3, 0), p(1.5, 0), p(1.5, 1)},
		Ways: []Way{
			{ID: 1, Nodes: []int32{0, 1}, Road: Road{Class: Primary}},
			{ID: 2, Nodes: []int32{1, 4, 2}, Road: Road{Class: Primary, Heavy: Guests}},
			{ID: 3, Nodes: []int32{2, 3}, Road: Road{Class: Primary}},
			{ID: 4, Nodes: []int32{1, 5, 2}, Road: Road{Class: Primary}},
		},
	}
	n := built(t, in)
	for _, tc := range []struct {
		tonnes float64
		to     int
		round  bool
	}{{3.5, 3, false}, {4.2, 3, true}, {4.2, 4, false}} {
		r := routed(t, n, Vehicle{MassT: tc.tonnes}, Fastest)
		path, err := r.Query().Route(r.Snap(in.Nodes[0].Point, 50), r.Snap(in.Nodes[tc.to].Point, 50))
		if err != nil {
			t.Fatal(err)
		}
		round := false
		for _, q := range n.Line(path) {
			round = round || q == in.Nodes[5].Point
		}
		if round != tc.round {
			t.Errorf("%v t to node %d: round is %v, want %v", tc.tonnes, tc.to, round, tc.round)
		}
	}
}
