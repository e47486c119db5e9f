package road

import (
	"container/heap"
	"math/rand/v2"
	"testing"

	"ullage/data/osm/osmtest"
	"ullage/geo/road/net"
)

// This file holds the oracle: plain Dijkstra on the same network, which knows nothing of the hierarchy. The states of
// forbidden turns have an oracle of their own, see turns_test.go.

type item struct {
	cost  uint64
	state uint32
}
type items []item

func (h items) Len() int           { return len(h) }
func (h items) Less(i, j int) bool { return h[i].cost < h[j].cost }
func (h items) Swap(i, j int)      { h[i], h[j] = h[j], h[i] }
func (h *items) Push(x any)        { *h = append(*h, x.(item)) }
func (h *items) Pop() any {
	old := *h
	x := old[len(old)-1]
	*h = old[:len(old)-1]
	return x
}

// dijkstra returns the cost from the seeds to every state; noWay where there is none. With stop it ends once every state in
// stop is settled.
func dijkstra(r *Router, seeds []seed, stop map[uint32]bool) (dist []uint64) {
	n := r.Net
	dist = make([]uint64, n.States())
	for i := range dist {
		dist[i] = noWay
	}
	var h items
	for _, s := range seeds {
		if uint64(s.cost) < dist[s.state] {
			dist[s.state] = uint64(s.cost)
			heap.Push(&h, item{uint64(s.cost), s.state})
		}
	}
	left := len(stop)
	for len(h) > 0 {
		x := heap.Pop(&h).(item)
		if x.cost > dist[x.state] {
			continue
		}
		if stop[x.state] {
			if left--; left == 0 {
				break
			}
		}
		lo, hi := n.Arcs(x.state)
		for a := lo; a < hi; a++ {
			if c := r.arcCost(a); c != noWay && x.cost+uint64(c) < dist[n.Head(a)] {
				dist[n.Head(a)] = x.cost + uint64(c)
				heap.Push(&h, item{dist[n.Head(a)], n.Head(a)})
			}
		}
	}
	return dist
}

// oracleCost is the least cost between two spots by Dijkstra.
func oracleCost(r *Router, from, to Spot) uint64 {
	best, _ := r.along(from, to)
	cost := uint64(best)
	finals := r.finals(to, nil)
	stop := map[uint32]bool{}
	for _, f := range finals {
		stop[f.state] = true
	}
	dist := dijkstra(r, r.starts(from, nil), stop)
	for _, f := range finals {
		cost = min(cost, dist[f.state]+uint64(f.cost))
	}
	return min(cost, noWay)
}

// compareWithDijkstra asks both about random pairs and checks that the path found is a way and costs what is said.
func compareWithDijkstra(t *testing.T, n *net.Network, pairs int, seed uint64) (ways int) {
	t.Helper()
	rng := rand.New(rand.NewPCG(seed, 2))
	for _, v := range testVehicles {
		for _, aim := range []Aim{Fastest, Shortest} {
			r := routed(t, n, v, aim)
			q := r.Query()
			for range pairs {
				from, to := anySpot(n, rng), anySpot(n, rng)
				want := oracleCost(r, from, to)
				got, ok := q.Cost(from, to)
				if uint64(got) != want || ok != (want != noWay) {
					t.Fatalf("vehicle %+v, aim %d, %+v to %+v: %d, Dijkstra %d", v, aim, from, to, got, want)
				}
				path, err := q.Route(from, to)
				if (err == nil) != ok {
					t.Fatalf("Route %+v to %+v: %v, but Cost says %v", from, to, err, ok)
				}
				if !ok {
					continue
				}
				ways++
				if path.Cost != want {
					t.Fatalf("vehicle %+v, aim %d, %+v to %+v: the path's pieces cost %d, not %d: %v", v, aim, from, to, path.Cost, want, path.Steps)
				}
				checkWay(t, r, from, to, path)
			}
		}
	}
	return ways
}

// checkWay follows a path state by state.
func checkWay(t *testing.T, r *Router, from, to Spot, p Path) {
	t.Helper()
	n := r.Net
	first, last := p.Steps[0], p.Steps[len(p.Steps)-1]
	if first.Edge() != from.Edge || first.FromCm != from.Cm || last.Edge() != to.Edge || last.ToCm != to.Cm {
		t.Fatalf("the path goes from %+v to %+v, not from %+v to %+v", first, last, from, to)
	}
	state, ok := n.Arrival(first.Dir)
	for i, s := range p.Steps {
		road := n.Road(s.Edge())
		if why := r.Vehicle.Closes(road, int(s.Dir&1)); why.Why != net.MayDrive {
			t.Fatalf("step %d uses a road that is closed: %+v", i, why)
		}
		if i == 0 {
			continue
		}
		if before := p.Steps[i-1]; before.ToCm != n.EndCm(before.Dir) || s.FromCm != n.StartCm(s.Dir) {
			t.Fatalf("steps %d and %d do not meet: %+v %+v", i-1, i, before, s)
		}
		found := false
		lo, hi := n.Arcs(state)
		for a := lo; a < hi && ok; a++ {
			if n.Dir(a) == s.Dir && r.arcCost(a) != noWay {
				state, found = n.Head(a), true
				break
			}
		}
		if !found {
			t.Fatalf("step %d: %+v may not follow %+v", i, s, p.Steps[i-1])
		}
	}
}

// TestMadeAgainstDijkstra: small made networks, all features.
func TestMadeAgainstDijkstra(t *testing.T) {
	ways := 0
	for seed := range uint64(12) {
		ways += compareWithDijkstra(t, built(t, osmtest.Grid(4+int(seed), seed)), 40, seed)
	}
	if ways < 1000 {
		t.Errorf("only %d of %d pairs have a way", ways, 12*10*40)
	}
}

// A network that was coded and decoded, with turns over ways between and at times.
func TestDecodedAgainstDijkstra(t *testing.T) {
	for seed := range uint64(4) {
		in := osmtest.Grid(9, 300+seed)
		in.Turns = append(in.Turns, osmtest.TurnsOver(in, rand.New(rand.NewPCG(seed, 5)), 20)...)
		for i := range in.Turns {
			if i%4 == 3 {
				in.Turns[i].At = "no_left_turn @ (Su)"
			}
		}
		n, err := net.Decode(t.Context(), built(t, in).Encode())
		if err != nil {
			t.Fatal(err)
		}
		compareWithDijkstra(t, n, 3, seed)
	}
}
