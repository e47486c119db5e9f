package osmtest

import (
	"math/rand/v2"
	"slices"

	"github.com/paulmach/orb"

	"ullage/geo/road/net"
)

// This file makes roads for tests.

// A maker puts roads together, all from a seed.
type maker struct {
	rng *rand.Rand
	in  net.Input
}

// node is a new one at a point.
func (m *maker) node(p orb.Point) int32 {
	m.in.Nodes = append(m.in.Nodes, net.Node{Point: p})
	return int32(len(m.in.Nodes) - 1)
}

// way is a new one over nodes, numbered from 1.
func (m *maker) way(r net.Road, nodes ...int32) {
	m.in.Ways = append(m.in.Ways, net.Way{ID: int64(len(m.in.Ways) + 1), Nodes: nodes, Road: r})
}

// Grid is a jittered grid of side×side junctions with missing streets, one-ways, limits, gates, forbidden turns and a
// few faster roads, all from the seed.
func Grid(side int, seed uint64) net.Input {
	m := &maker{rng: rand.New(rand.NewPCG(seed, 1))}
	for y := range side {
		for x := range side {
			m.node(orb.Point{7 + 0.003*(float64(x)+0.6*m.rng.Float64()), 46 + 0.002*(float64(y)+0.6*m.rng.Float64())})
		}
	}
	for y := range side {
		for x := range side {
			at := int32(y*side + x)
			if x+1 < side {
				m.street(at, at+1)
			}
			if y+1 < side {
				m.street(at, at+int32(side))
			}
		}
	}
	m.turns(side * side)
	for range side {
		m.loop(int32(m.rng.IntN(side * side)))
	}
	return m.in
}

// street joins two junctions by any road, straight or with a bend, or leaves them apart.
func (m *maker) street(a, b int32) {
	if m.rng.IntN(100) < 15 {
		return
	}
	r, nodes := m.anyRoad(), []int32{a, b}
	if m.rng.IntN(3) == 0 {
		nodes = []int32{a, m.bend(a, b), b}
	}
	m.way(r, nodes...)
}

// anyRoad is a road of any class, of which some have something that a router must see.
func (m *maker) anyRoad() net.Road {
	rng := m.rng
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
	return r
}

// bend is a node between two others, now and then with a low gate.
func (m *maker) bend(a, b int32) int32 {
	pa, pb := m.in.Nodes[a].Point, m.in.Nodes[b].Point
	v := m.node(orb.Point{(pa[0]+pb[0])/2 + 0.001*m.rng.Float64(), (pa[1] + pb[1]) / 2})
	if m.rng.IntN(8) == 0 {
		m.in.Nodes[v].Gate = &net.Road{Class: net.Service, Limits: net.Limits{HeightCm: 230}}
	}
	return v
}

// turns forbids some at a quarter of the junctions, or allows no other.
func (m *maker) turns(junctions int) {
	rng, at := m.rng, map[int32][]int64{}
	for _, w := range m.in.Ways {
		for _, v := range []int32{w.Nodes[0], w.Nodes[len(w.Nodes)-1]} {
			at[v] = append(at[v], w.ID)
		}
	}
	for v := range int32(junctions) {
		if list := at[v]; len(list) > 2 && rng.IntN(4) == 0 {
			for range 1 + rng.IntN(2) {
				m.in.Turns = append(m.in.Turns, net.Turn{From: list[rng.IntN(len(list))], To: list[rng.IntN(len(list))], Via: v,
					Only: rng.IntN(4) == 0, Heavy: rng.IntN(4) == 0})
			}
		}
	}
}

// loop is a way from a node to itself, which no turn names: it would not be clear by which end.
func (m *maker) loop(v int32) {
	p := m.in.Nodes[v].Point
	a, b := m.node(orb.Point{p[0] + 0.0003, p[1]}), m.node(orb.Point{p[0], p[1] + 0.0003})
	m.way(net.Road{Class: net.Residential}, v, a, b, v)
}

// Country is a country of side×side towns 18 km apart, of which each is a jittered grid of streets with a tenth missing;
// roads of some junctions join neighbours, every fourth row and column is primary, every fourteenth a motorway. Town sizes are
// skewed; 56 makes two million junctions and 1,000 km. The seed fixes all.
func Country(side int, seed uint64) net.Input {
	m := &maker{rng: rand.New(rand.NewPCG(seed, 7))}
	const apart = 18.0 // km
	towns := make([]town, side*side)
	for t := range towns {
		x, y := apart*(float64(t%side)+0.3*m.rng.Float64()), apart*(float64(t/side)+0.3*m.rng.Float64())
		towns[t] = m.town(x, y)
	}
	for t, from := range towns {
		x, y, k := t%side, t/side, len(from)
		if x+1 < side && m.rng.IntN(10) > 0 {
			to := towns[t+1]
			m.road(from[k/2][k-1], to[len(to)/2][0], classOf(y))
		}
		if y+1 < side && m.rng.IntN(10) > 0 {
			to := towns[t+side]
			m.road(from[k-1][k/2], to[0][len(to)/2], classOf(x))
		}
	}
	return m.in
}

// A town is its junctions, by row and column.
type town [][]int32

// town is a new one with its south-western corner at x, y km.
func (m *maker) town(x0, y0 float64) town {
	const street = 0.12                              // km
	k := 8 + int(64*m.rng.Float64()*m.rng.Float64()) // mean 24, 8 to 71
	t := make(town, k)
	for y := range t {
		for x := range k {
			east, north := x0+street*(float64(x)+0.5*m.rng.Float64()), y0+street*(float64(y)+0.5*m.rng.Float64())
			t[y] = append(t[y], m.node(orb.Point{2 + east/75, 43 + north/111.2}))
		}
	}
	for y := range t {
		m.streets(t, y)
	}
	return t
}

// streets are a row and a column of a town, interrupted here and there; those through its middle are whole.
func (m *maker) streets(t town, i int) {
	middle, class := i == len(t)/2, net.Residential
	if middle {
		class = net.Tertiary
	}
	var row, column []int32
	for j := range t {
		row, column = append(row, t[i][j]), append(column, t[j][i])
		if !middle && m.rng.IntN(10) == 0 {
			m.piece(class, row)
			row = nil
		}
		if !middle && m.rng.IntN(10) == 0 {
			m.piece(class, column)
			column = nil
		}
	}
	m.piece(class, row)
	m.piece(class, column)
}

// piece is a way over nodes, if they are enough for one.
func (m *maker) piece(class net.Class, nodes []int32) {
	if len(nodes) > 1 {
		m.way(net.Road{Class: class}, nodes...)
	}
}

// road joins two towns with a dozen bends, and a farm off each.
func (m *maker) road(a, b int32, class net.Class) {
	const bends = 12
	nodes := []int32{a}
	pa, pb := m.in.Nodes[a].Point, m.in.Nodes[b].Point
	for i := 1; i <= bends; i++ {
		f := float64(i) / (bends + 1)
		nodes = append(nodes, m.node(orb.Point{
			pa[0] + f*(pb[0]-pa[0]) + 0.01*(m.rng.Float64()-0.5), pa[1] + f*(pb[1]-pa[1]) + 0.01*(m.rng.Float64()-0.5)}))
	}
	m.piece(class, append(nodes, b))
	for _, v := range nodes[1:] {
		p := m.in.Nodes[v].Point
		m.piece(net.Service, []int32{v, m.node(orb.Point{p[0] + 0.003, p[1] + 0.003})})
	}
}

// classOf is the class of the roads between towns in a row or column of the country.
func classOf(line int) net.Class {
	switch {
	case line%14 == 7:
		return net.Motorway
	case line%4 == 0:
		return net.Primary
	}
	return net.Secondary
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
