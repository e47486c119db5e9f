package road

import (
	"math"
	"testing"

	"github.com/paulmach/orb"

	"ullage/geo/road/net"
)

func TestSnap(t *testing.T) {
	p := func(xM, yM float64) net.Node { return net.Node{Point: orb.Point{7 + xM/77243, 46 + yM/111195}} }
	in := net.Input{
		// A motorway, a service road 30 m beside it, a tunnel below the place, a closed way, a lane not joined with the rest.
		Nodes: []net.Node{p(0, 0), p(1000, 0), p(0, 30), p(1000, 30), p(500, 10), p(500, 40), p(400, 20), p(600, 20), p(480, 16), p(520, 16)},
		Ways: []net.Way{
			{ID: 1, Nodes: []int32{0, 1}, Road: net.Road{Class: net.Motorway, Name: "M"}},
			{ID: 2, Nodes: []int32{2, 3}, Road: net.Road{Class: net.Service, Name: "S"}},
			{ID: 3, Nodes: []int32{4, 5}, Road: net.Road{Class: net.Primary, Name: "T", Flags: net.Tunnel}},
			{ID: 4, Nodes: []int32{6, 7}, Road: net.Road{Class: net.Service, Name: "low", Limits: net.Limits{HeightCm: 200}}},
			{ID: 5, Nodes: []int32{8, 9}, Road: net.Road{Class: net.Service, Name: "apart"}},
			{ID: 6, Nodes: []int32{0, 2}, Road: net.Road{Class: net.Service, Name: "a"}},
			{ID: 7, Nodes: []int32{1, 3}, Road: net.Road{Class: net.Service, Name: "b"}},
		},
	}
	n := built(t, in)
	r := routed(t, n, net.Vehicle{HeightM: 3}, Fastest)
	car := routed(t, n, net.Vehicle{}, Fastest)
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
