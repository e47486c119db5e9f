package road

import (
	"context"
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"
)

// This file makes networks for tests.

// madeInput is a jittered grid of side×side junctions with missing streets, one-ways, limits, gates, forbidden turns and a
// few faster roads, all from the seed.
func madeInput(side int, seed uint64) Input {
	rng := rand.New(rand.NewPCG(seed, 1))
	var in Input
	for y := range side {
		for x := range side {
			p := orb.Point{7 + 0.003*(float64(x)+0.6*rng.Float64()), 46 + 0.002*(float64(y)+0.6*rng.Float64())}
			in.Nodes = append(in.Nodes, Node{Point: p})
		}
	}
	id := int64(0)
	link := func(a, b int) {
		if rng.IntN(100) < 15 {
			return
		}
		id++
		r := Road{Class: Class(rng.IntN(int(Track)))}
		switch rng.IntN(12) {
		case 0:
			r.Access[1] = Closed
		case 1:
			r.Access[0] = Closed
		case 2:
			r.Limits.HeightCm = uint16(200 + 10*rng.IntN(20))
		case 3:
			r.Limits.Mass10Kg = uint16(280 + 100*rng.IntN(6))
		case 4:
			r.Access = [2]Access{Guests, Guests}
		case 5:
			r.Heavy = Closed
		case 6:
			r.Kmh = [2]float32{float32(30 + 10*rng.IntN(9)), float32(30 + 10*rng.IntN(9))}
		case 7:
			r.Flags |= Toll
		}
		nodes := []int32{int32(a), int32(b)}
		if rng.IntN(3) == 0 { // a bend
			pa, pb := in.Nodes[a].Point, in.Nodes[b].Point
			bend := orb.Point{(pa[0]+pb[0])/2 + 0.001*rng.Float64(), (pa[1] + pb[1]) / 2}
			in.Nodes = append(in.Nodes, Node{Point: bend})
			if rng.IntN(8) == 0 {
				in.Nodes[len(in.Nodes)-1].Gate = &Road{Class: Service, Limits: Limits{HeightCm: 230}}
			}
			nodes = []int32{int32(a), int32(len(in.Nodes) - 1), int32(b)}
		}
		in.Ways = append(in.Ways, Way{ID: id, Nodes: nodes, Road: r})
	}
	for y := range side {
		for x := range side {
			if x+1 < side {
				link(y*side+x, y*side+x+1)
			}
			if y+1 < side {
				link(y*side+x, y*side+side+x)
			}
		}
	}
	at := map[int32][]int64{}
	for _, w := range in.Ways {
		for _, v := range []int32{w.Nodes[0], w.Nodes[len(w.Nodes)-1]} {
			at[v] = append(at[v], w.ID)
		}
	}
	for v := range int32(side * side) {
		if list := at[v]; len(list) > 2 && rng.IntN(4) == 0 {
			for range 1 + rng.IntN(2) {
				in.Turns = append(in.Turns, Turn{From: list[rng.IntN(len(list))], To: list[rng.IntN(len(list))], Via: v,
					Only: rng.IntN(4) == 0, Heavy: rng.IntN(4) == 0})
			}
		}
	}
	for range side { // loops, which no turn names: it would not be clear by which end
		v := int32(rng.IntN(side * side))
		p := in.Nodes[v].Point
		in.Nodes = append(in.Nodes, Node{Point: orb.Point{p[0] + 0.0003, p[1]}}, Node{Point: orb.Point{p[0], p[1] + 0.0003}})
		k := int32(len(in.Nodes))
		id++
		in.Ways = append(in.Ways, Way{ID: id, Nodes: []int32{v, k - 2, k - 1, v}, Road: Road{Class: Residential}})
	}
	return in
}

func built(t testing.TB, in Input) *Network {
	t.Helper()
	n, err := Build(context.Background(), in)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func routed(t testing.TB, n *Network, v Vehicle, aim Aim) *Router {
	t.Helper()
	r, err := n.Router(context.Background(), v, aim)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// testVehicles are of five kinds: any car, a van, a coachbuilt, a heavy one, and one that shuns things.
var testVehicles = []Vehicle{
	{},
	{HeightM: 2.65, WidthM: 2.1, LengthM: 6, MassT: 3.5, MarginM: 0.1, TopKmh: 95, Factor: 0.9},
	{HeightM: 3.05, WidthM: 2.3, LengthM: 7.4, MassT: 3.5, MarginM: 0.1, TopKmh: 95, Factor: 0.9},
	{HeightM: 3.4, WidthM: 2.35, LengthM: 8.8, MassT: 7.5, AxleT: 4.8, MarginM: 0.15, TopKmh: 80, Factor: 0.85},
	{HeightM: 2.8, NoToll: true, NoFerry: true, NoTrack: true, NoUnpaved: true, NoHighways: true},
}

func anySpot(n *Network, rng *rand.Rand) Spot {
	e := uint32(rng.IntN(n.Edges()))
	return Spot{OK: true, Edge: e, Cm: uint32(rng.IntN(int(n.cm[e]) + 1))}
}
