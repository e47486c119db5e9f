package road

import (
	"context"
	"math/rand/v2"
	"os"
	"runtime"
	"slices"
	"strconv"
	"testing"
	"time"

	"github.com/paulmach/orb"
)

// madeCountry is a country of side×side towns 18 km apart, of which each is a jittered grid of streets with a tenth missing;
// roads of some junctions join neighbours, every fourth row and column is primary, every fourteenth a motorway. Town sizes are
// skewed; 56 makes two million junctions and 1,000 km. The seed fixes all.
func madeCountry(side int, seed uint64) Input {
	rng := rand.New(rand.NewPCG(seed, 7))
	var in Input
	node := func(x, y float64) int32 { // km
		in.Nodes = append(in.Nodes, Node{Point: orb.Point{2 + x/75, 43 + y/111.2}})
		return int32(len(in.Nodes) - 1)
	}
	way := func(c Class, nodes ...int32) {
		if len(nodes) > 1 {
			in.Ways = append(in.Ways, Way{ID: int64(len(in.Ways) + 1), Nodes: nodes, Road: Road{Class: c}})
		}
	}
	const apart = 18.0 // km
	type town struct{ grid [][]int32 }
	towns := make([]town, side*side)
	for t := range towns {
		x0, y0 := apart*(float64(t%side)+0.3*rng.Float64()), apart*(float64(t/side)+0.3*rng.Float64())
		k := 8 + int(64*rng.Float64()*rng.Float64()) // mean 24, 8 to 71
		const street = 0.12
		grid := make([][]int32, k)
		for y := range grid {
			for x := range k {
				grid[y] = append(grid[y], node(x0+street*(float64(x)+0.5*rng.Float64()), y0+street*(float64(y)+0.5*rng.Float64())))
			}
		}
		for y := range k {
			var row, column []int32
			for x := range k {
				class := Residential
				if y == k/2 {
					class = Tertiary
				}
				row, column = append(row, grid[y][x]), append(column, grid[x][y])
				if y != k/2 && rng.IntN(10) == 0 {
					way(class, row...)
					row = nil
				}
				if y != k/2 && rng.IntN(10) == 0 {
					way(class, column...)
					column = nil
				}
			}
			class := Residential
			if y == k/2 {
				class = Tertiary
			}
			way(class, row...)
			way(class, column...)
		}
		towns[t].grid = grid
	}
	join := func(a, b int32, class Class, junctions int) {
		nodes := []int32{a}
		pa, pb := in.Nodes[a].Point, in.Nodes[b].Point
		for i := 1; i <= junctions; i++ {
			f := float64(i) / float64(junctions+1)
			p := orb.Point{pa[0] + f*(pb[0]-pa[0]) + 0.01*(rng.Float64()-0.5), pa[1] + f*(pb[1]-pa[1]) + 0.01*(rng.Float64()-0.5)}
			in.Nodes = append(in.Nodes, Node{Point: p})
			nodes = append(nodes, int32(len(in.Nodes)-1))
		}
		way(class, append(nodes, b)...)
		for _, v := range nodes[1:] { // a farm
			p := in.Nodes[v].Point
			in.Nodes = append(in.Nodes, Node{Point: orb.Point{p[0] + 0.003, p[1] + 0.003}})
			way(Service, v, int32(len(in.Nodes)-1))
		}
	}
	classOf := func(line int) Class {
		switch {
		case line%14 == 7:
			return Motorway
		case line%4 == 0:
			return Primary
		}
		return Secondary
	}
	for t, town := range towns {
		x, y, k := t%side, t/side, len(town.grid)
		if x+1 < side && rng.IntN(10) > 0 {
			other := towns[t+1].grid
			join(town.grid[k/2][k-1], other[len(other)/2][0], classOf(y), 12)
		}
		if y+1 < side && rng.IntN(10) > 0 {
			other := towns[t+side].grid
			join(town.grid[k-1][k/2], other[0][len(other)/2], classOf(x), 12)
		}
	}
	return in
}

func TestMadeCountryAgainstDijkstra(t *testing.T) {
	if ways := compareWithDijkstra(t, built(t, madeCountry(3, 1)), 15, 1); ways < 100 {
		t.Errorf("only %d ways", ways)
	}
}

// TestTwoMillion measures a network of two million junctions, seed 1. It asserts no times, and is skipped without
// ULLAGE_FULL=1. ULLAGE_TOWNS is another number of towns a side than 56.
func TestTwoMillion(t *testing.T) {
	if os.Getenv("ULLAGE_FULL") == "" {
		t.Skip("takes minutes: set ULLAGE_FULL=1")
	}
	side := 56
	if s, err := strconv.Atoi(os.Getenv("ULLAGE_TOWNS")); err == nil {
		side = s
	}
	start := time.Now()
	took := func(what string, n int) {
		d := time.Since(start)
		if n == 0 {
			t.Logf("%-28s %8.2f s", what, d.Seconds())
		} else {
			t.Logf("%-28s %8.3f ms each", what, d.Seconds()*1000/float64(n))
		}
		start = time.Now()
	}
	heap := func() float64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return float64(m.HeapAlloc)
	}
	in := madeCountry(side, 1)
	took("making the input", 0)
	base := heap()
	start = time.Now()
	n := built(t, in)
	took("build", 0)
	var ms runtime.MemStats
	runtime.ReadMemStats(&ms)
	in = Input{}
	states := float64(n.States())
	t.Logf("%d states, %d edges, %d arcs, %d arcs of the hierarchy", n.States(), n.Edges(), len(n.head), len(n.cch.upHead))
	t.Logf("network %.0f bytes a junction (hierarchy %.0f), most while building about %.0f", float64(n.Bytes())/states,
		float64(n.cch.bytes())/states, (float64(ms.HeapSys)-base)/states)
	start = time.Now()
	r := routed(t, n, testVehicles[2], Fastest)
	took("weigh for a vehicle", 0)
	coded := n.Encode()
	took("encode", 0)
	if _, err := Decode(context.Background(), coded); err != nil {
		t.Fatal(err)
	}
	took("decode", 0)
	t.Logf("coded %.1f bytes a junction", float64(len(coded))/states)
	t.Logf("router %.0f bytes a junction", float64(r.Bytes())/states)
	q := r.Query()
	rng := rand.New(rand.NewPCG(1, 8))
	var from, to []Spot
	for range 2000 {
		from, to = append(from, anySpot(n, rng)), append(to, anySpot(n, rng))
	}
	times := make([]time.Duration, len(from))
	for i := range from {
		start = time.Now()
		q.Cost(from[i], to[i])
		times[i] = time.Since(start)
	}
	slices.Sort(times)
	median := times[len(times)/2]
	t.Logf("query: median %v, 99 %% %v, most %v, states seen at the last %d", median, times[len(times)*99/100], times[len(times)-1], len(q.chain))
	start = time.Now()
	steps := 0
	for i := range 200 {
		p, err := q.Route(from[i], to[i])
		if err == nil {
			steps += len(p.Steps)
		}
	}
	took("query with its path", 200)
	t.Logf("%d edges a path", steps/200)
	var slow []time.Duration
	for i := range 9 {
		start = time.Now()
		if want, got := oracleCost(r, from[i], to[i]), uint64(0); true {
			slow = append(slow, time.Since(start))
			c, _ := q.Cost(from[i], to[i])
			if got = uint64(c); got != want {
				t.Errorf("%d, Dijkstra %d", got, want)
			}
		}
	}
	slices.Sort(slow)
	t.Logf("Dijkstra: median %v: %.0f times as long", slow[4], float64(slow[4])/float64(median))
	// A route of about 1,000 km with a thousand places near it.
	a, b := r.Snap(orb.Point{2.1, 43.1}, 20_000), r.Snap(orb.Point{2.1 + float64(side)*11.4/75, 43.1 + float64(side)*11.4/111.2}, 20_000)
	path, err := q.Route(a, b)
	if err != nil {
		t.Fatal(err)
	}
	var places []Spot
	line := n.Line(path)
	for len(places) < 1000 {
		p := line[rng.IntN(len(line))]
		if s := r.SnapSite(Site{Point: orb.Point{p[0] + 0.1*(rng.Float64()-0.5), p[1] + 0.1*(rng.Float64()-0.5)}}, 5000); s.OK {
			places = append(places, s)
		}
	}
	for range 3 {
		start = time.Now()
		list, err := q.Detours(context.Background(), path.Course(), places, DetourOptions{MaxExtraM: 20_000})
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("%d detours to %d places on %.0f km in %d legs: %v", len(list), len(places), path.LengthM/1000, len(q.legs(path.Course())), time.Since(start))
	}
}
