package road

import (
	"testing"

	"github.com/paulmach/orb"

	"ullage/geo/road/net"
)

func TestThrough(t *testing.T) {
	p := func(xM, yM float64) orb.Point { return orb.Point{7 + xM/77243, 46 + yM/111195} }
	in := net.Input{
		Nodes: []net.Node{{Point: p(0, 0)}, {Point: p(1000, 0)}, {Point: p(1000, 1000)}, {Point: p(5000, 0)}, {Point: p(6000, 0)}},
		Ways: []net.Way{
			{ID: 1, Nodes: []int32{0, 1}, Road: net.Road{Class: net.Residential}},
			{ID: 2, Nodes: []int32{1, 2}, Road: net.Road{Class: net.Residential}},
			{ID: 3, Nodes: []int32{3, 4}, Road: net.Road{Class: net.Residential}}, // not joined
		},
	}
	n := built(t, in)
	q := routed(t, n, net.Vehicle{}, Fastest).Query()
	for _, tc := range []struct {
		name   string
		points []orb.Point
		want   string // r road, d drawn
	}{
		{"none", nil, ""},
		{"one", []orb.Point{p(0, 0)}, ""},
		{"on roads", []orb.Point{p(100, 5), p(1005, 500)}, "r"},
		{"and back", []orb.Point{p(100, 5), p(1005, 500), p(500, 0)}, "rr"},
		{"off the roads", []orb.Point{p(100, 5), p(500, 500), p(900, 0)}, "dd"},
		{"no way between", []orb.Point{p(100, 5), p(900, 0), p(5500, 0), p(5600, 0)}, "rdr"},
		{"twice the same", []orb.Point{p(100, 5), p(100, 5)}, "r"},
	} {
		c := q.Through(tc.points, 50)
		got := ""
		var last orb.Point
		for i, s := range c {
			line := s.Line(n)
			if len(s.Steps) > 0 {
				got += "r"
			} else {
				got += "d"
			}
			if i > 0 && net.QuickM(line[0], last) > 0.05 {
				t.Errorf("%s: stretch %d begins at %v, the one before ends at %v", tc.name, i, line[0], last)
			}
			last = line[len(line)-1]
		}
		if got != tc.want {
			t.Errorf("%s: %q, want %q", tc.name, got, tc.want)
		}
	}
	if m, s := q.r.Measure(q.Through([]orb.Point{p(0, 0), p(1000, 1000)}, 50)); m < 1990 || m > 2010 || s < m*3.6/26 || s > m*3.6/24 {
		t.Errorf("2 km at 25 km/h: %v m, %v s", m, s)
	}
}
