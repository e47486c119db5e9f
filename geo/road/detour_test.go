package road

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"

	"ullage/data/osm/osmtest"
	"ullage/geo/road/net"
	"ullage/geo/road/order"
)

// bruteDetour tries every pair of stations of a leg, the second not before the first, each by Dijkstra.
func bruteDetour(r *Router, leg []station, place Spot) (least int64, ok bool) {
	there := make([]uint64, len(leg))
	back := make([]uint64, len(leg))
	for i, s := range leg {
		if s.state == order.None {
			there[i], back[i] = oracleCost(r, s.spot, place), oracleCost(r, place, s.spot)
			continue
		}
		there[i], back[i] = noWay, noWay
		dist := dijkstra(r, []seed{{state: s.state}}, nil)
		for _, f := range r.finals(place, nil) {
			there[i] = min(there[i], dist[f.state]+uint64(f.cost))
		}
		back[i] = dijkstra(r, r.starts(place, nil), nil)[s.state]
	}
	for i := range leg {
		for k := i; k < len(leg); k++ {
			if there[i] >= noWay || back[k] >= noWay {
				continue
			}
			c := int64(there[i]+back[k]) - int64(leg[k].cost-leg[i].cost)
			if !ok || c < least {
				least, ok = c, true
			}
		}
	}
	return least, ok
}

func TestDetoursAgainstBruteForce(t *testing.T) {
	found, farther := 0, 0
	for seed := range uint64(6) {
		in := osmtest.Grid(8, 200+seed)
		plain := seed%2 == 0 // without roads for guests, length and time are what is made least
		for i := range in.Ways {
			if plain && in.Ways[i].Road.Access == [2]net.Access{net.Guests, net.Guests} {
				in.Ways[i].Road.Access = [2]net.Access{}
			}
		}
		n := built(t, in)
		rng := rand.New(rand.NewPCG(seed, 4))
		for _, v := range []net.Vehicle{testVehicles[0], testVehicles[2]} {
			for _, aim := range []Aim{Fastest, Shortest} {
				r := routed(t, n, v, aim)
				q := r.Query()
				path, err := q.Route(anySpot(n, rng), anySpot(n, rng), anySpot(n, rng))
				if err != nil {
					continue
				}
				places := make([]Spot, 12)
				for i := range places {
					places[i] = anySpot(n, rng)
				}
				places[0] = Spot{OK: true, Edge: path.Steps[0].Edge(), Cm: n.LengthCm(path.Steps[0].Edge()) / 2}
				places[1] = Spot{OK: true, Edge: path.Steps[len(path.Steps)/2].Edge()}
				places[2] = Spot{} // not on a road
				list, err := q.Detours(context.Background(), path.Course(), places, DetourOptions{})
				if err != nil {
					t.Fatal(err)
				}
				legs := q.legs(path.Course())
				next := map[int][]Detour{}
				for _, d := range list {
					next[d.Place] = append(next[d.Place], d)
				}
				for i, p := range places {
					var want []int64
					for _, leg := range legs {
						if !p.OK {
							continue
						}
						if c, ok := bruteDetour(r, leg, p); ok {
							want = append(want, c)
						}
					}
					got := map[int64]int{}
					for _, d := range next[i] {
						got[d.cost]++
						if d.RejoinM < d.LeaveM {
							t.Errorf("joined at %v m, before it is left at %v m", d.RejoinM, d.LeaveM)
						}
						if d.LeaveM < 0 || d.RejoinM > path.LengthM+0.01 {
							t.Errorf("left at %v m and joined at %v m of %v m", d.LeaveM, d.RejoinM, path.LengthM)
						}
						extra := d.ExtraS * 1000
						if aim == Shortest {
							extra = d.ExtraM * 100
						}
						if plain && math.Abs(extra-float64(d.cost)) > 0.5 {
							t.Errorf("seed %d, %+v, aim %d, place %+v: extra %v, cost %d", seed, v, aim, p, extra, d.cost)
						}
						if found++; d.cost > 0 {
							farther++
						}
					}
					for _, c := range want {
						if got[c] == 0 {
							t.Fatalf("seed %d, %+v, aim %d, place %d %+v: detours %v, by brute force %v", seed, v, aim, i, p, got, want)
						}
						got[c]--
					}
					if len(next[i]) != len(want) {
						t.Fatalf("place %d: %d detours, want %d", i, len(next[i]), len(want))
					}
				}
			}
		}
	}
	if found < 100 || farther < 80 {
		t.Errorf("%d detours, %d longer than nothing", found, farther)
	}
}

// A motorway of two carriageways with exits at both ends, 20 km apart: what lies beside the other carriageway is far away.
func TestOtherCarriagewayIsFar(t *testing.T) {
	lat := func(km float64) float64 { return 46 + km/111.195 }
	at := func(km, east float64) net.Node { return net.Node{Point: orb.Point{7 + east/77.2, lat(km)}} } // 77.2 km a degree at 46° N
	in := net.Input{
		// 0-4 north-bound, 5-9 south-bound 30 m beside it, service areas 10 and 11 in the middle of each.
		Nodes: []net.Node{at(0, 0), at(5, 0), at(10, 0), at(15, 0), at(20, 0), at(20, -0.03), at(15, -0.03), at(10, -0.03), at(5, -0.03), at(0, -0.03),
			at(10, 0.1), at(10, -0.13), at(20, 0.5), at(0, 0.5)},
		Ways: []net.Way{
			{ID: 1, Nodes: []int32{0, 1, 2, 3, 4}, Road: net.Road{Class: net.Motorway, Access: [2]net.Access{net.Open, net.Closed}}},
			{ID: 2, Nodes: []int32{5, 6, 7, 8, 9}, Road: net.Road{Class: net.Motorway, Access: [2]net.Access{net.Open, net.Closed}}},
			{ID: 3, Nodes: []int32{1, 10, 3}, Road: net.Road{Class: net.Service, Access: [2]net.Access{net.Open, net.Closed}}},
			{ID: 4, Nodes: []int32{6, 11, 8}, Road: net.Road{Class: net.Service, Access: [2]net.Access{net.Open, net.Closed}}},
			{ID: 5, Nodes: []int32{4, 12, 5}, Road: net.Road{Class: net.Primary}},
			{ID: 6, Nodes: []int32{9, 13, 0}, Road: net.Road{Class: net.Primary}},
		},
	}
	n := built(t, in)
	r := routed(t, n, testVehicles[1], Shortest)
	q := r.Query()
	path, err := q.Route(r.Snap(in.Nodes[13].Point, 50), r.Snap(in.Nodes[12].Point, 50))
	if err != nil {
		t.Fatal(err)
	}
	here, across := r.SnapSite(Site{Point: in.Nodes[10].Point}, 200), r.SnapSite(Site{Point: in.Nodes[11].Point}, 200)
	list, err := q.Detours(context.Background(), path.Course(), []Spot{here, across}, DetourOptions{})
	if err != nil || len(list) != 2 {
		t.Fatal(list, err)
	}
	if d := list[0].ExtraM; d < 0 || d > 10 {
		t.Errorf("the service area on our side costs %v m", d)
	}
	// By hand: to the end, back to 15 km and out at 5 km, to the start and up again: 40 km and the ends.
	if d := list[1].ExtraM; d < 40_000 || d > 42_500 {
		t.Errorf("the service area on the other side costs %v m, want about 41 km", d)
	}
}

// A course of roads, a piece as drawn, and roads again: positions count on, and no detour leaves out the drawn piece.
func TestDetoursOnDrawnCourse(t *testing.T) {
	n := built(t, osmtest.Grid(10, 77))
	r := routed(t, n, net.Vehicle{}, Shortest)
	q := r.Query()
	rng := rand.New(rand.NewPCG(7, 7))
	var paths []Path
	for len(paths) < 2 {
		if p, err := q.Route(anySpot(n, rng), anySpot(n, rng)); err == nil && p.LengthM > 1000 {
			paths = append(paths, p)
		}
	}
	line := orb.LineString{{8, 46}, {8, 46.1}}
	c := Course{{Steps: paths[0].Steps}, {Drawn: line}, {Steps: paths[1].Steps}}
	before := paths[0].LengthM + net.LineM(line)
	var places []Spot
	for range 30 {
		places = append(places, anySpot(n, rng))
	}
	list, err := q.Detours(context.Background(), c, places, DetourOptions{})
	if err != nil {
		t.Fatal(err)
	}
	first, second := 0, 0
	for _, d := range list {
		switch {
		case d.LeaveM <= paths[0].LengthM+0.01 && d.RejoinM <= paths[0].LengthM+0.01:
			first++
		case d.LeaveM >= before-0.01 && d.RejoinM <= before+paths[1].LengthM+0.01:
			second++
		default:
			t.Errorf("left at %v m and joined at %v m; drawn from %v to %v", d.LeaveM, d.RejoinM, paths[0].LengthM, before)
		}
	}
	if first < 20 || second < 20 {
		t.Errorf("%d detours from the first roads, %d from the last", first, second)
	}
	if m, _ := r.Measure(c); math.Abs(m-before-paths[1].LengthM) > 0.01 {
		t.Errorf("the course measures %v m", m)
	}
	near, err := q.Detours(context.Background(), c, places, DetourOptions{MaxExtraM: 500})
	if err != nil {
		t.Fatal(err)
	}
	within := 0
	for _, d := range list {
		if d.ExtraM <= 500 {
			within++
		}
	}
	if len(near) != within {
		t.Errorf("%d detours up to 500 m, of all %d are", len(near), within)
	}
}
