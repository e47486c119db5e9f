package road

import (
	"container/heap"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/paulmach/orb"

	"ullage/data/osm/osmtest"
	"ullage/geo/road/net"
)

// byEdges is Dijkstra over directions of edges instead of states, which asks the input's turns at every junction: it shares
// nothing with the way the network keeps them. Roads must be named as their way's number, junctions lie at different points.
//
// With turnsBack false nobody turns back into the road that he came by, unless every other way on is forbidden to light vehicles.
func byEdges(r *Router, turns map[string][]net.Turn, at map[net.Pos]int32, from, to Spot, turnsBack bool) uint64 {
	n := r.Net
	out := map[uint32][]uint32{} // junction → directions
	all := map[uint32][]uint32{} // also those that the vehicle may not use
	for e := range uint32(n.Edges()) {
		for back := range uint32(2) {
			if dir := e<<1 | back; n.Road(e).Access[back] != net.Closed {
				all[n.TailOf(dir)] = append(all[n.TailOf(dir)], dir)
			}
			if dir := e<<1 | back; r.cost[dir] != noWay {
				out[n.TailOf(dir)] = append(out[n.TailOf(dir)], dir)
			}
		}
	}
	mayTurn := func(in, next uint32, heavy bool) bool {
		j := n.TailOf(in ^ 1)
		only, meant := false, false
		for _, t := range turns[n.Road(in>>1).Name] {
			if via, ok := at[n.Pos(j)]; !ok || via != t.Via || t.Heavy && !heavy {
				continue
			}
			same := n.Road(next>>1).Name == fmt.Sprint(t.To)
			if !t.Only && same {
				return false
			}
			only, meant = only || t.Only, meant || t.Only && same
		}
		return !only || meant
	}
	straight, _ := r.along(from, to)
	best := uint64(straight)
	dist := map[uint32]uint64{} // driven to the end of a direction
	var h items
	push := func(dir uint32, cost uint64) {
		if d, ok := dist[dir]; !ok || cost < d {
			dist[dir] = cost
			heap.Push(&h, item{cost, dir})
		}
	}
	for back := range uint32(2) {
		if c := r.out(from, back); c != noWay {
			push(from.Edge<<1|back, uint64(c))
		}
	}
	for len(h) > 0 {
		x := heap.Pop(&h).(item)
		if x.cost > dist[x.state] {
			continue
		}
		for _, next := range out[n.TailOf(x.state^1)] {
			if !mayTurn(x.state, next, r.Vehicle.MassT > net.HeavyT) {
				continue
			}
			if next == x.state^1 && !turnsBack && slices.ContainsFunc(all[n.TailOf(next)], func(o uint32) bool {
				return o != next && mayTurn(x.state, o, false)
			}) {
				continue
			}
			if next>>1 == to.Edge {
				best = min(best, x.cost+uint64(r.into(to, next&1)))
			}
			push(next, x.cost+uint64(r.cost[next]))
		}
	}
	return best
}

func TestTurnsAgainstEdges(t *testing.T) {
	differ, total := 0, 0
	for seed := range uint64(8) {
		in := osmtest.Grid(7, 100+seed)
		turnsBack := seed%2 == 0
		if in.TurnBackM = -1; !turnsBack {
			in.TurnBackM = 1e9
		}
		turns := map[string][]net.Turn{}
		at := map[net.Pos]int32{}
		for i := range in.Ways {
			in.Ways[i].Road.Name = fmt.Sprint(in.Ways[i].ID)
		}
		for _, x := range in.Turns {
			turns[fmt.Sprint(x.From)] = append(turns[fmt.Sprint(x.From)], x)
		}
		for i := range int32(49) {
			at[net.PosOf(in.Nodes[i].Point)] = i
		}
		n := built(t, in)
		free := in
		free.Turns = nil
		if n.States() <= built(t, free).States() {
			t.Fatal("the forbidden turns made no states")
		}
		rng := rand.New(rand.NewPCG(seed, 3))
		for _, v := range []net.Vehicle{testVehicles[0], testVehicles[3]} {
			r := routed(t, n, v, Fastest)
			q := r.Query()
			for range 60 {
				from, to := anySpot(n, rng), anySpot(n, rng)
				want := byEdges(r, turns, at, from, to, turnsBack)
				got, _ := q.Cost(from, to)
				if uint64(got) != want {
					t.Fatalf("seed %d, %+v: %+v to %+v: %d, over edges %d", seed, v, from, to, got, want)
				}
				if total++; want != byEdges(r, nil, at, from, to, turnsBack) {
					differ++
				}
			}
		}
	}
	if differ < 20 {
		t.Errorf("forbidden turns matter for %d of %d pairs only", differ, total)
	}
}

// A crossing of four arms, drawn by hand: no left turn from the south means around the block.
func TestNoLeftTurn(t *testing.T) {
	p := func(x, y float64) net.Node { return net.Node{Point: orb.Point{7 + x/1000, 46 + y/1000}} }
	in := net.Input{
		Nodes: []net.Node{p(0, 0), p(0, -1), p(-1, 0), p(0, 1), p(3, 0), p(-1, 1)},
		Ways: []net.Way{{ID: 1, Nodes: []int32{1, 0}}, {ID: 2, Nodes: []int32{0, 2}}, {ID: 3, Nodes: []int32{0, 3}}, {ID: 4, Nodes: []int32{0, 4}},
			{ID: 5, Nodes: []int32{3, 5, 2}}},
	}
	for i := range in.Ways {
		in.Ways[i].Road = net.Road{Class: net.Residential, Name: fmt.Sprint(in.Ways[i].ID)}
	}
	names := func(turns ...net.Turn) (list []string) {
		in.Turns = turns
		n := built(t, in)
		r := routed(t, n, net.Vehicle{}, Shortest)
		path, err := r.Query().Route(r.Snap(in.Nodes[1].Point, 10), r.Snap(in.Nodes[2].Point, 10))
		if err != nil {
			return []string{err.Error()}
		}
		for _, s := range path.Steps {
			if s.LengthCm() > 0 {
				list = append(list, n.Road(s.Edge()).Name)
			}
		}
		return list
	}
	for _, tc := range []struct {
		name  string
		turns []net.Turn
		want  []string
	}{
		{"free", nil, []string{"1", "2"}},
		{"no left", []net.Turn{{From: 1, To: 2, Via: 0}}, []string{"1", "3", "5"}},
		{"only straight", []net.Turn{{From: 1, To: 3, Via: 0, Only: true}}, []string{"1", "3", "5"}},
		// The dead end of way 4, far enough not to be a short cut, lets turn round, and then way 2 is straight on.
		{"only right", []net.Turn{{From: 1, To: 4, Via: 0, Only: true}}, []string{"1", "4", "4", "2"}},
		{"for heavy vehicles only", []net.Turn{{From: 1, To: 2, Via: 0, Heavy: true}}, []string{"1", "2"}},
		{"of another way", []net.Turn{{From: 4, To: 2, Via: 0}}, []string{"1", "2"}},
		{"of a way that is not there", []net.Turn{{From: 9, To: 2, Via: 0}}, []string{"1", "2"}},
	} {
		if got := names(tc.turns...); !slices.Equal(got, tc.want) {
			t.Errorf("%s: by %v, want %v", tc.name, got, tc.want)
		}
	}
}
