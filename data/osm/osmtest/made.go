package osmtest

import (
	"math/rand/v2"
	"slices"

	"github.com/paulmach/orb"

	"ullage/geo/road/net"
)

// This file makes roads for tests.

// Grid is a jittered grid of side×side junctions with missing streets, one-ways, limits, gates, forbidden turns and a
// few faster roads, all from the seed.
func Grid(side int, seed uint64) net.Input {
	rng := rand.New(rand.NewPCG(seed, 1))
	var in net.Input
	for y := range side {
		for x := range side {
			p := orb.Point{7 + 0.003*(float64(x)+0.6*rng.Float64()), 46 + 0.002*(float64(y)+0.6*rng.Float64())}
			in.Nodes = append(in.Nodes, net.Node{Point: p})
		}
	}
	id := int64(0)
	link := func(a, b int) {
		if rng.IntN(100) < 15 {
			return
		}
		id++
		r := net.Road{Class: net.Class(rng.IntN(int(net.Track)))}
		switch rng.IntN(12) {
		case 0:
			r.Access[1] = net.Closed
		case 1:
			r.Access[0] = net.Closed
		case 2:
			r.Limits.HeightCm = uint16(200 + 10*rng.IntN(20))
		case 3:
			r.Limits.Mass10Kg = uint16(280 + 100*rng.IntN(6))
		case 4:
			r.Access = [2]net.Access{net.Guests, net.Guests}
		case 5:
			r.Heavy = net.Closed
		case 6:
			r.Kmh = [2]float32{float32(30 + 10*rng.IntN(9)), float32(30 + 10*rng.IntN(9))}
		case 7:
			r.Flags |= net.Toll
		}
		nodes := []int32{int32(a), int32(b)}
		if rng.IntN(3) == 0 { // a bend
			pa, pb := in.Nodes[a].Point, in.Nodes[b].Point
			bend := orb.Point{(pa[0]+pb[0])/2 + 0.001*rng.Float64(), (pa[1] + pb[1]) / 2}
			in.Nodes = append(in.Nodes, net.Node{Point: bend})
			if rng.IntN(8) == 0 {
				in.Nodes[len(in.Nodes)-1].Gate = &net.Road{Class: net.Service, Limits: net.Limits{HeightCm: 230}}
			}
			nodes = []int32{int32(a), int32(len(in.Nodes) - 1), int32(b)}
		}
		in.Ways = append(in.Ways, net.Way{ID: id, Nodes: nodes, Road: r})
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
				in.Turns = append(in.Turns, net.Turn{From: list[rng.IntN(len(list))], To: list[rng.IntN(len(list))], Via: v,
					Only: rng.IntN(4) == 0, Heavy: rng.IntN(4) == 0})
			}
		}
	}
	for range side { // loops, which no turn names: it would not be clear by which end
		v := int32(rng.IntN(side * side))
		p := in.Nodes[v].Point
		in.Nodes = append(in.Nodes, net.Node{Point: orb.Point{p[0] + 0.0003, p[1]}}, net.Node{Point: orb.Point{p[0], p[1] + 0.0003}})
		k := int32(len(in.Nodes))
		id++
		in.Ways = append(in.Ways, net.Way{ID: id, Nodes: []int32{v, k - 2, k - 1, v}, Road: net.Road{Class: net.Residential}})
	}
	return in
}

// Country is a country of side×side towns 18 km apart, of which each is a jittered grid of streets with a tenth missing;
// roads of some junctions join neighbours, every fourth row and column is primary, every fourteenth a motorway. Town sizes are
// skewed; 56 makes two million junctions and 1,000 km. The seed fixes all.
func Country(side int, seed uint64) net.Input {
	rng := rand.New(rand.NewPCG(seed, 7))
	var in net.Input
	node := func(x, y float64) int32 { // km
		in.Nodes = append(in.Nodes, net.Node{Point: orb.Point{2 + x/75, 43 + y/111.2}})
		return int32(len(in.Nodes) - 1)
	}
	way := func(c net.Class, nodes ...int32) {
		if len(nodes) > 1 {
			in.Ways = append(in.Ways, net.Way{ID: int64(len(in.Ways) + 1), Nodes: nodes, Road: net.Road{Class: c}})
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
				class := net.Residential
				if y == k/2 {
					class = net.Tertiary
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
			class := net.Residential
			if y == k/2 {
				class = net.Tertiary
			}
			way(class, row...)
			way(class, column...)
		}
		towns[t].grid = grid
	}
	join := func(a, b int32, class net.Class, junctions int) {
		nodes := []int32{a}
		pa, pb := in.Nodes[a].Point, in.Nodes[b].Point
		for i := 1; i <= junctions; i++ {
			f := float64(i) / float64(junctions+1)
			p := orb.Point{pa[0] + f*(pb[0]-pa[0]) + 0.01*(rng.Float64()-0.5), pa[1] + f*(pb[1]-pa[1]) + 0.01*(rng.Float64()-0.5)}
			in.Nodes = append(in.Nodes, net.Node{Point: p})
			nodes = append(nodes, int32(len(in.Nodes)-1))
		}
		way(class, append(nodes, b)...)
		for _, v := range nodes[1:] { // a farm
			p := in.Nodes[v].Point
			in.Nodes = append(in.Nodes, net.Node{Point: orb.Point{p[0] + 0.003, p[1] + 0.003}})
			way(net.Service, v, int32(len(in.Nodes)-1))
		}
	}
	classOf := func(line int) net.Class {
		switch {
		case line%14 == 7:
			return net.Motorway
		case line%4 == 0:
			return net.Primary
		}
		return net.Secondary
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

// TurnsOver makes turns over one or two ways between from random walks over ways of one piece.
func TurnsOver(in net.Input, rng *rand.Rand, count int) (list []net.Turn) {
	at := map[int32][]net.Way{}
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
			if walk = append(walk, w.ID); v == w.Nodes[0] && w.Road.Access[0] == net.Closed || v != w.Nodes[0] && w.Road.Access[1] == net.Closed {
				walk = append(walk, w.ID) // against a one-way: no turn
			}
			if v = w.Nodes[0] + w.Nodes[len(w.Nodes)-1] - v; len(walk) > 1 && walk[len(walk)-2] == w.ID {
				break
			}
		}
		distinct := slices.Clone(walk)
		slices.Sort(distinct)
		if k := len(walk); k > 2 && len(slices.Compact(distinct)) == k {
			list = append(list, net.Turn{From: walk[0], Over: walk[1 : k-1], To: walk[k-1], Only: rng.IntN(5) == 0, Heavy: rng.IntN(4) == 0})
		}
	}
	return list
}
