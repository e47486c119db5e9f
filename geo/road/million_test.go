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

	"ullage/data/osm/osmtest"
	"ullage/geo/road/net"
)

func TestMadeCountryAgainstDijkstra(t *testing.T) {
	if ways := compareWithDijkstra(t, built(t, osmtest.Country(3, 1)), 15, 1); ways < 100 {
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
	in := osmtest.Country(side, 1)
	took("making the input", 0)
	base := heap()
	start = time.Now()
	n := built(t, in)
	took("build", 0)
	var ms runtime.MemStats
	runtime.ReadMemStats(&ms)
	in = net.Input{}
	states := float64(n.States())
	_, arcs := n.Arcs(uint32(n.States() - 1))
	t.Logf("%d states, %d edges, %d arcs, %d arcs of the hierarchy", n.States(), n.Edges(), arcs, len(n.Hierarchy().UpHead))
	t.Logf("network %.0f bytes a junction (hierarchy %.0f), most while building about %.0f", float64(n.Bytes())/states,
		float64(n.Hierarchy().Bytes())/states, (float64(ms.HeapSys)-base)/states)
	start = time.Now()
	r := routed(t, n, testVehicles[2], Fastest)
	took("weigh for a vehicle", 0)
	coded := n.Encode()
	took("encode", 0)
	if _, err := net.Decode(context.Background(), coded); err != nil {
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
	line := n.Line(path.Steps)
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
