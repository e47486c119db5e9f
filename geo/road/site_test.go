package road

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"

	"ullage/data/osm/osmtest"
	"ullage/geo/road/net"
)

// A fenced site of 200 m by 200 m between a street in the north, 20 m from the fence, and one in the south from which a drive
// leads in. The point is in the north of the site: the street behind the fence is nearer than the drive.
func TestSnapSite(t *testing.T) {
	at := func(x, y float64) orb.Point { return orb.Point{7 + x/77243, 46 + y/111195} }
	node := func(x, y float64) net.Node { return net.Node{Point: at(x, y)} }
	in := net.Input{
		Nodes: []net.Node{
			node(-500, 120), node(500, 120), // the street in the north
			node(-500, -120), node(0, -120), node(100, -120), node(500, -120), // in the south
			node(0, -20),                  // end of the drive
			node(100, -100),               // a corner of the fence, where a lane ends
			node(-40, 30), node(-40, -30), // a lane joined with nothing
			node(-90, -90), node(-90, 300), // a tunnel below
		},
		Ways: []net.Way{
			{ID: 1, Nodes: []int32{0, 1}, Road: net.Road{Class: net.Residential, Name: "north"}},
			{ID: 2, Nodes: []int32{2, 3, 4, 5}, Road: net.Road{Class: net.Residential, Name: "south"}},
			{ID: 3, Nodes: []int32{0, 2}, Road: net.Road{Class: net.Residential, Name: "west"}},
			{ID: 4, Nodes: []int32{1, 5}, Road: net.Road{Class: net.Residential, Name: "east"}},
			{ID: 5, Nodes: []int32{3, 6}, Road: net.Road{Class: net.Service, Name: "drive", Limits: net.Limits{HeightCm: 250}}},
			{ID: 6, Nodes: []int32{4, 7}, Road: net.Road{Class: net.Service, Name: "lane", Limits: net.Limits{HeightCm: 350}}},
			{ID: 7, Nodes: []int32{8, 9}, Road: net.Road{Class: net.Service, Name: "apart"}},
			{ID: 8, Nodes: []int32{10, 11}, Road: net.Road{Class: net.Service, Name: "tunnel", Flags: net.Tunnel}},
		},
	}
	n := built(t, in)
	car, high, higher := routed(t, n, net.Vehicle{}, Fastest), routed(t, n, net.Vehicle{HeightM: 3}, Fastest), routed(t, n, net.Vehicle{HeightM: 4}, Fastest)
	fence := orb.LineString{at(-100, -100), at(100, -100), at(100, 100), at(-100, 100), at(-100, -100)}
	off := orb.LineString{at(-100, -100), at(99, -99), at(100, 100), at(-100, 100), at(-100, -100)} // the lane ends before it
	gate := []orb.Point{at(-50, -100)}
	point := at(0, 50)
	for _, tc := range []struct {
		what string
		r    *Router
		site Site
		maxM float64
		road string
		offM float64
		in   bool
	}{
		{"no outline", car, Site{Point: at(0, 45)}, 1000, "drive", 65, false},
		{"no outline, the drive is too low", high, Site{Point: point}, 1000, "north", 70, false},
		{"farther north, no outline", car, Site{Point: at(0, 90)}, 1000, "north", 30, false},
		{"farther north, outline", car, Site{Point: at(0, 90), Outline: fence}, 1000, "drive", 110, true},
		{"the outline has a gate too", car, Site{point, fence, gate}, 1000, "drive", 70, true},
		{"too low: by the gate", high, Site{point, fence, gate}, 1000, "south", 20 + math.Hypot(50, 150), false},
		{"a gate far from every road", high, Site{point, fence, []orb.Point{at(-100, 0)}}, 1000, "lane", math.Hypot(100, 150), false},
		{"of two gates the one with less way", high, Site{point, fence, []orb.Point{at(-50, -100), at(-50, 100)}}, 1000, "north", 20 + math.Hypot(50, 50), false},
		{"a gate without outline", car, Site{Point: point, Gates: gate}, 1000, "south", 20 + math.Hypot(50, 150), false},
		{"a gate that is too far from the point", high, Site{point, fence, gate}, 160, "north", 70, false},
		{"no gate: the lane that ends at the fence", high, Site{Point: point, Outline: fence}, 1000, "lane", math.Hypot(100, 150), false},
		{"the lane ends before the fence", high, Site{Point: point, Outline: off}, 1000, "north", 70, false},
		{"that is too low as well", higher, Site{Point: point, Outline: fence}, 1000, "north", 70, false},
		{"an outline that is none", car, Site{Point: at(0, 45), Outline: fence[:3]}, 1000, "drive", 65, false},
		{"a road along the outline is not within", car, Site{Point: at(0, 90), Outline: orb.LineString{at(-400, -20), at(400, -20), at(400, 120), at(-400, 120), at(-400, -20)}},
			1000, "north", 30, false},
		{"nothing within reach", higher, Site{Point: point, Outline: fence}, 40, "", 0, false},
	} {
		got := tc.r.SnapSite(tc.site, tc.maxM)
		name := ""
		if got.OK {
			name = n.Road(got.Edge).Name
		}
		if name != tc.road || math.Abs(got.OffM-tc.offM) > 0.5 || got.In != tc.in {
			t.Errorf("%s: %q %+v, want %q %.0f m off, in %v", tc.what, name, got, tc.road, tc.offM, tc.in)
		}
	}
}

// Against every edge, the obvious way: within a random outline no road that counts is nearer than the one found.
func TestSnapSiteAgainstAll(t *testing.T) {
	n := built(t, osmtest.Grid(14, 5))
	r := routed(t, n, testVehicles[1], Fastest)
	rng := rand.New(rand.NewPCG(5, 6))
	within := 0
	for range 300 {
		s := Site{Point: anySpot(n, rng).Point(n)}
		for k := range 6 { // a star around the point
			a, far := float64(k)/6*2*math.Pi, 0.0005+0.003*rng.Float64()
			s.Outline = append(s.Outline, orb.Point{s.Point[0] + far*math.Cos(a), s.Point[1] + far*math.Sin(a)})
		}
		s.Outline = append(s.Outline, s.Outline[0])
		got := r.SnapSite(s, 5000)
		least := math.Inf(1)
		for _, at := range r.near(s.Point, 5000) {
			for _, p := range append(net.LineOf(n.Points(at.Edge)), at.Point(n)) {
				// Two metres farther away.
				off := net.QuickM(s.Point, p)
				beyond := orb.Point{s.Point[0] + (1+2/max(off, 2))*(p[0]-s.Point[0]), s.Point[1] + (1+2/max(off, 2))*(p[1]-s.Point[1])}
				if r.joined(at.Edge) && planar.RingContains(orb.Ring(s.Outline), beyond) {
					least = min(least, off+r.entering(at))
				}
			}
		}
		switch {
		case got.In != !math.IsInf(least, 1):
			t.Fatalf("%+v in %v: within the outline, of all edges %v", got, s.Outline, least)
		case got.In && math.Abs(got.OffM+r.entering(got)-least) > 0.1:
			t.Fatalf("%+v counts %v, of all edges %v", got, got.OffM+r.entering(got), least)
		case got.In:
			within++
		}
	}
	if within < 50 || within == 300 {
		t.Errorf("%d of 300 have a road within: too few or all", within)
	}
}
