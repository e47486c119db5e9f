package road

import (
	"container/heap"
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"github.com/paulmach/orb"
)

// byHistory is Dijkstra over the last directions driven, as many as the longest turn has, which asks the input's turns at every
// junction. Slow and obvious: a vertex for each history, no state of the network. Otherwise as byEdges. Roads must be named as
// their way's number, and turns over ways between must not name ways in pieces.
func byHistory(r *Router, turns []Turn, at map[spot]int32, from, to Spot, turnsBack bool) uint64 {
	n := r.Net
	const keep = 4
	type history [keep]uint32 // the last direction first; none before the start
	out, all := map[uint32][]uint32{}, map[uint32][]uint32{}
	for e := range uint32(n.Edges()) {
		for dir := e << 1; dir <= e<<1|1; dir++ {
			if n.Road(e).Access[dir&1] != Closed {
				all[n.tailOf(dir)] = append(all[n.tailOf(dir)], dir)
			}
			if r.cost[dir] != noWay {
				out[n.tailOf(dir)] = append(out[n.tailOf(dir)], dir)
			}
		}
	}
	type end struct {
		junction uint32
		way      int64
	}
	id, touches := make([]int64, n.Edges()), map[end]bool{}
	for e := range id {
		id[e], _ = strconv.ParseInt(n.Road(uint32(e)).Name, 10, 64)
		touches[end{n.from[e], id[e]}], touches[end{n.to[e], id[e]}] = true, true
	}
	// ended says that a history ends with the ways of a list. U-turns inside it are no such way.
	ended := func(h history, ways []int64) bool {
		for i := range ways {
			w := ways[len(ways)-1-i]
			if h[i] == none || id[h[i]>>1] != w || i > 0 && h[i]>>1 == h[i-1]>>1 {
				return false
			}
		}
		return true
	}
	mayTurn := func(h history, next uint32, heavy bool) bool {
		j, viaKnown := at[n.at[n.tailOf(h[0]^1)]]
		// Several that say only, of the same length and for the same vehicles, leave all that one of them names.
		type key struct {
			length int
			heavy  bool
		}
		only, meant := map[key]bool{}, map[key]bool{}
		for _, t := range turns {
			if t.Heavy && !heavy {
				continue
			}
			route := append(append([]int64{t.From}, t.Over...), t.To)
			for i := 1; i < len(route); i++ {
				switch {
				case !ended(h, route[:i]), i < len(route)-1 && !t.Only:
					continue
				case len(t.Over) == 0 && (!viaKnown || t.Via != j), len(t.Over) > 0 && !touches[end{n.tailOf(h[0] ^ 1), route[i]}]:
					continue
				}
				same := id[next>>1] == route[i]
				if !t.Only && same {
					return false
				}
				if t.Only {
					k := key{i, t.Heavy}
					only[k], meant[k] = true, meant[k] || same
				}
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
			push(history{from.Edge<<1 | back, none, none, none}, uint64(c))
		}
	}
	for len(h) > 0 {
		x := list[heap.Pop(&h).(item).state]
		if x.cost > dist[x.h] {
			continue
		}
		for _, next := range out[n.tailOf(x.h[0]^1)] {
			if !mayTurn(x.h, next, r.Vehicle.MassT > HeavyT) {
				continue
			}
			if next == x.h[0]^1 && !turnsBack && slices.ContainsFunc(all[n.tailOf(next)], func(o uint32) bool {
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

// turnsOver makes turns over one or two ways between from random walks over ways of one piece.
func turnsOver(in Input, rng *rand.Rand, count int) (list []Turn) {
	at := map[int32][]Way{}
	for _, w := range in.Ways {
		first, last := w.Nodes[0], w.Nodes[len(w.Nodes)-1]
		if first == last || slices.ContainsFunc(w.Nodes, func(v int32) bool { return in.Nodes[v].Gate != nil }) {
			continue
		}
		at[first], at[last] = append(at[first], w), append(at[last], w)
	}
	for len(list) < count {
		v := int32(rng.IntN(len(in.Nodes)))
		if len(at[v]) == 0 {
			continue
		}
		var walk []int64
		for range 3 + rng.IntN(2) {
			w := at[v][rng.IntN(len(at[v]))]
			if walk = append(walk, w.ID); v == w.Nodes[0] && w.Road.Access[0] == Closed || v != w.Nodes[0] && w.Road.Access[1] == Closed {
				walk = append(walk, w.ID) // against a one-way: no turn
			}
			if v = w.Nodes[0] + w.Nodes[len(w.Nodes)-1] - v; len(walk) > 1 && walk[len(walk)-2] == w.ID {
				break
			}
		}
		distinct := slices.Clone(walk)
		slices.Sort(distinct)
		if k := len(walk); k > 2 && len(slices.Compact(distinct)) == k {
			list = append(list, Turn{From: walk[0], Over: walk[1 : k-1], To: walk[k-1], Only: rng.IntN(5) == 0, Heavy: rng.IntN(4) == 0})
		}
	}
	return list
}

func TestTurnsOverWaysAgainstHistories(t *testing.T) {
	differ, total := 0, 0
	for seed := range uint64(8) {
		in := madeInput(6, 500+seed)
		rng := rand.New(rand.NewPCG(seed, 5))
		for i := range in.Ways {
			in.Ways[i].Road.Name = fmt.Sprint(in.Ways[i].ID)
		}
		at := map[spot]int32{}
		for i := range int32(36) {
			at[spotOf(in.Nodes[i].Point)] = i
		}
		single := in.Turns
		in.Turns = append(slices.Clone(single), turnsOver(in, rng, 40)...)
		turnsBack := seed%2 == 0
		if in.TurnBackM = -1; !turnsBack {
			in.TurnBackM = 1e9
		}
		n := built(t, in)
		if len(n.onward) == 0 {
			t.Fatal("no states over ways between")
		}
		for _, v := range []Vehicle{testVehicles[0], testVehicles[3]} {
			r := routed(t, n, v, Fastest)
			q := r.Query()
			for range 20 {
				from, to := anySpot(n, rng), anySpot(n, rng)
				want := byHistory(r, in.Turns, at, from, to, turnsBack)
				got, _ := q.Cost(from, to)
				if uint64(got) != want {
					t.Fatalf("seed %d, %v: %+v to %+v: %d, over histories %d", seed, &v, from, to, got, want)
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
	p := func(x, y float64) Node { return Node{Point: orb.Point{7 + x/1000, 46 + y/1000}} }
	in := Input{
		Nodes: []Node{p(0, 0), p(1, 0), p(2, 0), p(3, 0), p(4, 0), p(2, 1), p(3, -9), p(4, 9)},
		Ways: []Way{
			{ID: 1, Nodes: []int32{0, 1}}, {ID: 2, Nodes: []int32{1, 2, 3}}, {ID: 3, Nodes: []int32{3, 4}}, {ID: 4, Nodes: []int32{5, 2}},
			{ID: 5, Nodes: []int32{3, 6}}, {ID: 6, Nodes: []int32{6, 4}}, {ID: 7, Nodes: []int32{4, 7}}, {ID: 8, Nodes: []int32{7, 5}},
		},
		Turns:     []Turn{{From: 1, Over: []int64{2}, To: 3}},
		TurnBackM: -1,
	}
	for i := range in.Ways {
		in.Ways[i].Road = Road{Class: Residential, Name: fmt.Sprint(in.Ways[i].ID), Access: [2]Access{Open, Closed}}
	}
	names := func(from int32, turns ...Turn) (list []string) {
		in.Turns = turns
		n := built(t, in)
		if len(n.Notes()) != 0 {
			t.Errorf("notes %q", n.Notes())
		}
		r := routed(t, n, Vehicle{}, Shortest)
		path, err := r.Query().Route(r.Snap(in.Nodes[from].Point, 10), r.Snap(in.Nodes[7].Point, 10))
		if err != nil {
			return []string{err.Error()}
		}
		for _, s := range path.Steps {
			if name := n.Road(s.Edge()).Name; s.cm() > 0 && !slices.Contains(list, name) {
				list = append(list, name)
			}
		}
		return list
	}
	no, only := Turn{From: 1, Over: []int64{2}, To: 3}, Turn{From: 1, Over: []int64{2}, To: 5, Only: true}
	for _, tc := range []struct {
		name  string
		from  int32
		turns []Turn
		want  []string
	}{
		{"free", 0, nil, []string{"1", "2", "3", "7"}},
		{"forbidden", 0, []Turn{no}, []string{"1", "2", "5", "6", "7"}},
		{"only another", 0, []Turn{only}, []string{"1", "2", "5", "6", "7"}},
		{"from the side road", 5, []Turn{no, only}, []string{"4", "2", "3", "7"}},
		{"for heavy vehicles", 0, []Turn{{From: 1, Over: []int64{2}, To: 3, Heavy: true}}, []string{"1", "2", "3", "7"}},
		{"two of one beginning", 0, []Turn{no, {From: 1, Over: []int64{2}, To: 5}}, []string{ErrNoWay.Error()}},
	} {
		if got := names(tc.from, tc.turns...); !slices.Equal(got, tc.want) {
			t.Errorf("%s: by %v, want %v", tc.name, got, tc.want)
		}
	}
	in.Turns = []Turn{{From: 1, Over: []int64{5}, To: 6}, {From: 1, Over: []int64{2}, To: 8}, {From: 1, Over: []int64{99}, To: 3}}
	want := "3 of 3 turn restrictions do not fit the roads they name and are left out"
	if got := built(t, in).Notes(); !slices.Equal(got, []string{want}) {
		t.Errorf("notes %q", got)
	}
}
