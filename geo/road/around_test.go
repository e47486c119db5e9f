package road

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/paulmach/orb"

	"ullage/data/osm/osmtest"
	"ullage/geo/road/net"
)

// On random networks with limits: the best way of a car is led round what a high vehicle may not use. What comes out is a way
// that follows the rules of turning, uses nothing closed that could be gone round, keeps both ends, and keeps all of a way that
// was open.
func TestAroundRandomWays(t *testing.T) {
	led, kept, stuck := 0, 0, 0
	for seed := range uint64(20) {
		n := built(t, osmtest.Grid(10, 700+seed))
		rng := rand.New(rand.NewPCG(seed, 8))
		car, high := routed(t, n, testVehicles[0], Shortest), routed(t, n, testVehicles[2], Fastest)
		cars, q := car.Query(), high.Query()
		for range 100 {
			from, to := anySpot(n, rng), anySpot(n, rng)
			path, err := cars.Route(from, to)
			if err != nil {
				continue
			}
			closed := func(s net.Step) bool { return high.cost[s.Dir] == noWay }
			way, gone := q.Around(path.Steps)
			if first, last := way[0], way[len(way)-1]; first.Edge() != from.Edge || first.FromCm != from.Cm || last.Edge() != to.Edge || last.ToCm != to.Cm {
				t.Fatalf("seed %d: led from %+v to %+v, not from %+v to %+v", seed, first, last, from, to)
			}
			switch {
			case !slices.ContainsFunc(path.Steps, closed):
				kept++
				if !slices.Equal(way, path.Steps) || gone != nil {
					t.Fatalf("seed %d: an open way was changed", seed)
				}
			case slices.ContainsFunc(way, closed):
				stuck++
			default:
				led++
				if !slices.ContainsFunc(gone, closed) {
					t.Fatalf("seed %d: nothing is said to be gone", seed)
				}
				// Each piece alone obeys the rules of turning; where they meet, the road is one.
				checkMeet(t, high, way)
			}
		}
	}
	t.Logf("%d led round, %d open, %d with no way round", led, kept, stuck)
	if led < 100 || kept < 100 || stuck < 20 {
		t.Errorf("%d led round, %d open, %d with no way round: too few of one", led, kept, stuck)
	}
}

// checkMeet: each step is open, begins where the one before ends, and may follow it as far as that alone tells.
func checkMeet(t *testing.T, r *Router, way []net.Step) {
	t.Helper()
	n := r.Net
	for i, s := range way {
		if r.cost[s.Dir] == noWay {
			t.Fatalf("step %d is closed", i)
		}
		if i == 0 {
			continue
		}
		before := way[i-1]
		if before.ToCm != n.EndCm(before.Dir) || s.FromCm != n.StartCm(s.Dir) || n.TailOf(before.Dir^1) != n.TailOf(s.Dir) {
			t.Fatalf("steps %d and %d do not meet: %+v %+v", i-1, i, before, s)
		}
		state, _ := n.Arrival(before.Dir)
		follows := false
		for a, end := n.Arcs(state); a < end; a++ {
			follows = follows || n.Dir(a) == s.Dir
		}
		if !follows {
			t.Fatalf("%+v may not follow %+v", s, before)
		}
	}
}

// A ladder drawn by hand: the track goes straight on under the low bridge, the way round leaves it one road earlier, since the
// road just before the bridge is a dead end for a high vehicle, and joins it one later.
func TestAroundABridge(t *testing.T) {
	p := func(x, y float64) net.Node { return net.Node{Point: orb.Point{7 + x/1000, 46 + y/1000}} }
	in := net.Input{
		Nodes: []net.Node{p(0, 0), p(2, 0), p(4, 0), p(5, 0), p(7, 0), p(9, 0), p(2, 2), p(7, 2)},
		Ways: []net.Way{{ID: 1, Nodes: []int32{0, 1}}, {ID: 2, Nodes: []int32{1, 2}}, {ID: 3, Nodes: []int32{2, 3}}, {ID: 4, Nodes: []int32{3, 4}},
			{ID: 5, Nodes: []int32{4, 5}}, {ID: 6, Nodes: []int32{1, 6, 7, 4}}},
	}
	for i := range in.Ways {
		in.Ways[i].Road = net.Road{Class: net.Residential, Name: string(rune('0' + in.Ways[i].ID))}
	}
	in.Ways[2].Road.Limits.HeightCm = 250
	n := built(t, in)
	car, high := routed(t, n, net.Vehicle{}, Shortest), routed(t, n, net.Vehicle{HeightM: 3}, Fastest)
	path, err := car.Query().Route(car.Snap(in.Nodes[0].Point, 10), car.Snap(in.Nodes[5].Point, 10))
	if err != nil {
		t.Fatal(err)
	}
	names := func(steps []net.Step) (s string) {
		for _, x := range steps {
			s += n.Road(x.Edge()).Name
		}
		return s
	}
	way, gone := high.Query().Around(path.Steps)
	if names(path.Steps) != "12345" || names(way) != "165" || names(gone) != "3" {
		t.Errorf("%s is led by %s, gone is %s; want 12345, 165, 3", names(path.Steps), names(way), names(gone))
	}
	// What begins or ends under the bridge stays as it is.
	stuck := path.Steps[2:]
	if way, gone := high.Query().Around(stuck); names(way) != "345" || gone != nil {
		t.Errorf("%s is led by %s", names(stuck), names(way))
	}
}
