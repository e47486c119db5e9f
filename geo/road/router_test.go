package road

import (
	"testing"

	"github.com/paulmach/orb"

	"ullage/geo/road/net"
)

// A street that only goods vehicles with business there may use is a way like any other for a light vehicle. A heavy one goes
// round it, and uses it where its way ends there.
func TestHeavyGuests(t *testing.T) {
	p := func(x, y float64) net.Node { return net.Node{Point: orb.Point{7 + x/100, 46 + y/100}} }
	in := net.Input{
		Nodes: []net.Node{p(0, 0), p(1, 0), p(2, 0), p(3, 0), p(1.5, 0), p(1.5, 1)},
		Ways: []net.Way{
			{ID: 1, Nodes: []int32{0, 1}, Road: net.Road{Class: net.Primary}},
			{ID: 2, Nodes: []int32{1, 4, 2}, Road: net.Road{Class: net.Primary, Heavy: net.Guests}},
			{ID: 3, Nodes: []int32{2, 3}, Road: net.Road{Class: net.Primary}},
			{ID: 4, Nodes: []int32{1, 5, 2}, Road: net.Road{Class: net.Primary}},
		},
	}
	n := built(t, in)
	for _, tc := range []struct {
		tonnes float64
		to     int
		round  bool
	}{{3.5, 3, false}, {4.2, 3, true}, {4.2, 4, false}} {
		r := routed(t, n, net.Vehicle{MassT: tc.tonnes}, Fastest)
		path, err := r.Query().Route(r.Snap(in.Nodes[0].Point, 50), r.Snap(in.Nodes[tc.to].Point, 50))
		if err != nil {
			t.Fatal(err)
		}
		round := false
		for _, q := range n.Line(path.Steps) {
			round = round || q == in.Nodes[5].Point
		}
		if round != tc.round {
			t.Errorf("%v t to node %d: round is %v, want %v", tc.tonnes, tc.to, round, tc.round)
		}
	}
}
