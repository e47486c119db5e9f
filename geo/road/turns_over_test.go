package road

import (
	"container/heap"
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"github.com/paulmach/orb"

	"ullage/data/osm/osmtest"
	"ullage/geo/road/net"
	"ullage/geo/road/order"
)

// byHistory is Dijkstra over the last directions driven, as many as the longest turn has, which asks the input's turns at every
// junction. Slow and obvious: a vertex for each history, no state of the network. Otherwise as byEdges. Roads must be named as
// their way's number, and turns over ways between must not name ways in pieces.
func byHistory(r *Router, turns []net.Turn, at map[net.Pos]int32, from, to Spot, turnsBack bool) uint64 {
	n := r.Net
	const keep = 4
	type history [keep]uint32 // the last direction first; none before the start
	out, all := map[uint32][]uint32{}, map[uint32][]uint32{}
	for e := range uint32(n.Edges()) {
		for dir := e << 1; dir <= e<<1|1; dir++ {
			if n.Road(e).Access[dir&1] != net.Closed {
				all[n.TailOf(dir)] = append(all[n.TailOf(dir)], dir)
			}
			if r.cost[dir] != noWay {
				out[n.TailOf(dir)] = append(out[n.TailOf(dir)], dir)
			}
		}
	}
	type end struct {
		junction uint32
		way      int64
	}
	id, touches := make([]int64, n.Edges()), map[end]bool{}
	for e := range uint32(len(id)) {
		id[e], _ = strconv.ParseInt(n.Road(e).Name, 10, 64)
		touches[end{n.From(e), id[e]}], touches[end{n.To(e), id[e]}] = true, true
	}
	// Each turn by the ways that lead to one of its own.
	type leading struct {
		net.Turn
		route []int64
		i     int // of the way that follows
	}
	by := map[int64][]leading{}
	for _, t := range turns {
		route := append(append([]int64{t.From}, t.Over...), t.To)
		for i := 1; i < len(route); i++ {
			if i == len(route)-1 || t.Only {
				by[route[i-1]] = append(by[route[i-1]], leading{t, route, i})
			}
		}
	}
	// ended says that a history ends with the ways of a list. U-turns inside it are no such way.
	ended := func(h history, ways []int64) bool {
		for i := range ways {
			w := ways[len(ways)-1-i]
			if h[i] == order.None || id[h[i]>>1] != w || i > 0 && h[i]>>1 == h[i-1]>>1 {
				return false
			}
		}
		return true
	}
	mayTurn := func(h history, next uint32, heavy bool) bool {
		j, viaKnown := at[n.Pos(n.TailOf(h[0]^1))]
		// Several that say only, of the same length and for the same vehicles, leave all that one of them names.
		type key struct {
			length int
			heavy  bool
		}
		only, meant := map[key]bool{}, map[key]bool{}
		for _, t := range by[id[h[0]>>1]] {
			switch {
			case t.Heavy && !heavy, !ended(h, t.route[:t.i]):
				continue
			case len(t.Over) == 0 && (!viaKnown || t.Via != j), len(t.Over) > 0 && !touches[end{n.TailOf(h[0] ^ 1), t.route[t.i]}]:
				continue
			}
			same := id[next>>1] == t.route[t.i]
			if !t.Only && same {
				return false
			}
			if t.Only {
				k := key{t.i, t.Heavy}
				only[k], meant[k] = true, meant[k] || same
			}
		}
		for k := range only {
			if !meant[k] {
				return false
			}
		}
		return true
	}
	straight, _ := r.along(from, to)
	best := uint64(straight)
	dist := map[history]uint64{}
	type entry struct {
		cost uint64
		h    history
	}
	var list []entry
	var h items
	push := func(x history, cost uint64) {
		if d, ok := dist[x]; !ok || cost < d {
			dist[x] = cost
			list = append(list, entry{cost, x})
			heap.Push(&h, item{cost, uint32(len(list) - 1)})
		}
	}
	for back := range uint32(2) {
		if c := r.out(from, back); c != noWay {
			push(history{from.Edge<<1 | back, order.None, order.None, order.None}, uint64(c))
		}
	}
	for len(h) > 0 {
		x := list[heap.Pop(&h).(item).state]
		if x.cost >= best {
			break // what follows costs as much
		}
		if x.cost > dist[x.h] {
			continue
		}
		for _, next := range out[n.TailOf(x.h[0]^1)] {
			if !mayTurn(x.h, next, r.Vehicle.MassT > net.HeavyT) {
				continue
			}
			if next == x.h[0]^1 && !turnsBack && slices.ContainsFunc(all[n.TailOf(next)], func(o uint32) bool {
				return o != next && mayTurn(x.h, o, false)
			}) {
				continue
			}
			if next>>1 == to.Edge {
				best = min(best, x.cost+uint64(r.into(to, next&1)))
			}
			push(history{next, x.h[0], x.h[1], x.h[2]}, x.cost+uint64(r.cost[next]))
		}
	}
	return best
}

func TestTurnsOverWaysAgainstHistories(t *testing.T) {
	differ, total := 0, 0
	for seed := range uint64(8) {
		in := osmtest.Grid(6, 500+seed)
		rng := rand.New(rand.NewPCG(seed, 5))
		for i := range in.Ways {
			in.Ways[i].Road.Name = fmt.Sprint(in.Ways[i].ID)
		}
		at := map[net.Pos]int32{}
		for i := range int32(36) {
			at[net.PosOf(in.Nodes[i].Point)] = i
		}
		single := in.Turns
		in.Turns = append(slices.Clone(single), osmtest.TurnsOver(in, rng, 40)...)
		turnsBack := seed%2 == 0
		if in.TurnBackM = -1; !turnsBack {
			in.TurnBackM = 1e9
		}
		n, without := built(t, in), in
		without.Turns = single
		if n.States() <= built(t, without).States() {
			t.Fatal("no states over ways between")
		}
		for _, v := range []net.Vehicle{testVehicles[0], testVehicles[3]} {
			r := routed(t, n, v, Fastest)
			q := r.Query()
			for range 20 {
				from, to := anySpot(n, rng), anySpot(n, rng)
				want := byHistory(r, in.Turns, at, from, to, turnsBack)
				got, _ := q.Cost(from, to)
				if uint64(got) != want {
					t.Fatalf("seed %d, %+v: %+v to %+v: %d, over histories %d", seed, v, from, to, got, want)
				}
				if total++; want != byHistory(r, single, at, from, to, turnsBack) {
					differ++
				}
			}
		}
		compareWithDijkstra(t, n, 5, seed)
	}
	if t.Logf("turns over ways between matter for %d of %d pairs", differ, total); differ < 40 {
		t.Errorf("they matter for %d of %d pairs only", differ, total)
	}
}

// A way between that is cut by a junction in the middle, and a second turn that begins inside the first: A–B1–B2–C, drawn by hand
// as a ladder. Who turns in from the side road S may go on to C, who comes by A may not.
func TestTurnOverWayWithJunction(t *testing.T) {
	p := func(x, y float64) net.Node { return net.Node{Point: orb.Point{7 + x/1000, 46 + y/1000}} }
	in := net.Input{
		Nodes: []net.Node{p(0, 0), p(1, 0), p(2, 0), p(3, 0), p(4, 0), p(2, 1), p(3, -9), p(4, 9)},
		Ways: []net.Way{
			{ID: 1, Nodes: []int32{0, 1}}, {ID: 2, Nodes: []int32{1, 2, 3}}, {ID: 3, Nodes: []int32{3, 4}}, {ID: 4, Nodes: []int32{5, 2}},
			{ID: 5, Nodes: []int32{3, 6}}, {ID: 6, Nodes: []int32{6, 4}}, {ID: 7, Nodes: []int32{4, 7}}, {ID: 8, Nodes: []int32{7, 5}},
		},
		Turns:     []net.Turn{{From: 1, Over: []int64{2}, To: 3}},
		TurnBackM: -1,
	}
	for i := range in.Ways {
		in.Ways[i].Road = net.Road{Class: net.Residential, Name: fmt.Sprint(in.Ways[i].ID), Access: [2]net.Access{net.Open, net.Closed}}
	}
	names := func(from int32, turns ...net.Turn) (list []string) {
		in.Turns = turns
		n := built(t, in)
		if n.Omitted() != (net.Omitted{}) {
			t.Errorf("omitted %v", n.Omitted())
		}
		r := routed(t, n, net.Vehicle{}, Shortest)
		path, err := r.Query().Route(r.Snap(in.Nodes[from].Point, 10), r.Snap(in.Nodes[7].Point, 10))
		if err != nil {
			return []string{err.Error()}
		}
		for _, s := range path.Steps {
			if name := n.Road(s.Edge()).Name; s.LengthCm() > 0 && !slices.Contains(list, name) {
				list = append(list, name)
			}
		}
		return list
	}
	no, only := net.Turn{From: 1, Over: []int64{2}, To: 3}, net.Turn{From: 1, Over: []int64{2}, To: 5, Only: true}
	for _, tc := range []struct {
		name  string
		from  int32
		turns []net.Turn
		want  []string
	}{
		{"free", 0, nil, []string{"1", "2", "3", "7"}},
		{"forbidden", 0, []net.Turn{no}, []string{"1", "2", "5", "6", "7"}},
		{"only another", 0, []net.Turn{only}, []string{"1", "2", "5", "6", "7"}},
		{"from the side road", 5, []net.Turn{no, only}, []string{"4", "2", "3", "7"}},
		{"for heavy vehicles", 0, []net.Turn{{From: 1, Over: []int64{2}, To: 3, Heavy: true}}, []string{"1", "2", "3", "7"}},
		{"two of one beginning", 0, []net.Turn{no, {From: 1, Over: []int64{2}, To: 5}}, []string{ErrNoWay.Error()}},
	} {
		if got := names(tc.from, tc.turns...); !slices.Equal(got, tc.want) {
			t.Errorf("%s: by %v, want %v", tc.name, got, tc.want)
		}
	}
	in.Turns = []net.Turn{{From: 1, Over: []int64{5}, To: 6}, {From: 1, Over: []int64{2}, To: 8}, {From: 1, Over: []int64{99}, To: 3}}
	if got := built(t, in).Omitted(); got != (net.Omitted{net.UnfittingTurns: 3}) {
		t.Errorf("omitted %v", got)
	}
}
