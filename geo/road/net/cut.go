package net

import (
	"fmt"
	"math"

	"ullage/geo"
	"ullage/geo/road/order"
)

// A maker holds what is known while the network is made. Junctions come first among its states.
type maker struct {
	in    Input
	at    []Pos // by state
	edges []rawEdge
	ends  map[int64][2]int32 // first and last edge of the ways that turns name
	cuts  []bool             // by input node: ways are cut there
	junct []int32            // input node → junction + 1; 0 if none
	gates map[int32][]uint32 // input node with a barrier → its ends of road
	roads []Road
	known map[Road]uint32
	bends []byte

	comes   map[uint32]*history // arriving direction → what matters afterwards
	leaving order.Graph         // junction → directions out of it
	doubts  []doubt
	omitted Omitted
}

type rawEdge struct {
	from, to, cm, road, bend uint32 // bend: where its inner points begin
	bendEnd                  uint32
}

// cutWays cuts the ways at junctions and puts barriers between.
func (b *maker) cutWays() error {
	b.known = map[Road]uint32{}
	b.ends = map[int64][2]int32{}
	for _, t := range b.in.Turns {
		for _, way := range append([]int64{t.From, t.To}, t.Over...) {
			b.ends[way] = [2]int32{-1, -1}
		}
	}
	if err := b.findCuts(); err != nil {
		return err
	}
	b.junct = make([]int32, len(b.in.Nodes))
	b.gates = map[int32][]uint32{}
	for _, w := range b.in.Ways {
		if !w.Road.closed() && len(w.Nodes) > 1 {
			b.cutWay(w)
		}
	}
	b.passGates()
	return nil
}

// findCuts finds the nodes at which ways are cut: an end of a way, where ways meet, or a barrier.
func (b *maker) findCuts() error {
	met := make([]bool, len(b.in.Nodes))
	b.cuts = make([]bool, len(b.in.Nodes))
	for _, w := range b.in.Ways {
		if w.Road.closed() {
			continue
		}
		for i, v := range w.Nodes {
			if v < 0 || int(v) >= len(b.in.Nodes) {
				return fmt.Errorf("road: way %d goes through node %d, of %d", w.ID, v, len(b.in.Nodes))
			}
			node := b.in.Nodes[v]
			if p := node.Point; !(math.Abs(p[0]) <= 180 && math.Abs(p[1]) <= 90) {
				return fmt.Errorf("road: way %d goes through %v, %v: no place on earth", w.ID, p[0], p[1])
			}
			b.cuts[v] = b.cuts[v] || met[v] || i == 0 || i == len(w.Nodes)-1 || node.Gate != nil
			met[v] = true
		}
	}
	return nil
}

// cutWay adds the edges of a way. A barrier in its middle is an end before it and another beyond.
func (b *maker) cutWay(w Way) {
	road := b.roadIndex(w.Road)
	first, last := len(b.edges), len(w.Nodes)-1
	from, start := b.endOrJunction(w.Nodes[0]), 0
	for i := 1; i <= last; i++ {
		v := w.Nodes[i]
		if !b.cuts[v] {
			continue
		}
		to := b.endOrJunction(v)
		b.addEdge(from, to, road, w.Nodes[start:i+1])
		from, start = to, i
		if i < last && b.in.Nodes[v].Gate != nil {
			from = b.endOrJunction(v)
		}
	}
	if ends, ok := b.ends[w.ID]; ok {
		if ends[0] < 0 { // a way may come in several pieces, in order
			ends[0] = int32(first)
		}
		b.ends[w.ID] = [2]int32{ends[0], int32(len(b.edges) - 1)}
	}
}

// endOrJunction returns the junction at a node; at a barrier a new end of road.
func (b *maker) endOrJunction(v int32) uint32 {
	if b.in.Nodes[v].Gate != nil {
		end := b.corner(v)
		b.gates[v] = append(b.gates[v], end)
		return end
	}
	if b.junct[v] == 0 {
		b.junct[v] = int32(b.corner(v)) + 1
	}
	return uint32(b.junct[v] - 1)
}

// passGates joins what barriers part, unless they are closed. Several ends meet in a middle.
func (b *maker) passGates() {
	for i := range b.in.Nodes {
		v := int32(i)
		ends, gate := b.gates[v], b.in.Nodes[v].Gate
		if len(ends) < 2 || gate.closed() {
			continue
		}
		road := b.roadIndex(*gate)
		if len(ends) == 2 {
			b.addEdge(ends[0], ends[1], road, []int32{v})
			continue
		}
		middle := b.corner(v)
		for _, e := range ends {
			b.addEdge(e, middle, road, []int32{v})
		}
	}
}

func (b *maker) corner(v int32) uint32 {
	b.at = append(b.at, PosOf(b.in.Nodes[v].Point))
	return uint32(len(b.at) - 1)
}

func (b *maker) roadIndex(r Road) uint32 {
	i, ok := b.known[r]
	if !ok {
		i = uint32(len(b.roads))
		b.roads = append(b.roads, r)
		b.known[r] = i
	}
	return i
}

// addEdge adds a stretch through nodes.
func (b *maker) addEdge(from, to, road uint32, nodes []int32) {
	e := rawEdge{from: from, to: to, road: road, bend: uint32(len(b.bends))}
	length, last := 0.0, b.at[from]
	for i := 1; i < len(nodes); i++ {
		length += geo.DistanceM(b.in.Nodes[nodes[i-1]].Point, b.in.Nodes[nodes[i]].Point)
		if s := PosOf(b.in.Nodes[nodes[i]].Point); i < len(nodes)-1 && s != last {
			b.bends = appendBend(appendBend(b.bends, s.Lon-last.Lon), s.Lat-last.Lat)
			last = s
		}
	}
	e.bendEnd = uint32(len(b.bends))
	e.cm = uint32(min(max(1, math.Round(length*100)), MaxCost/2))
	b.edges = append(b.edges, e)
}

func (b *maker) mayDrive(dir uint32) bool {
	return b.roads[b.edges[dir>>1].road].Access[dir&1] != Closed
}

// headOf returns the junction that a direction leads to.
func (b *maker) headOf(dir uint32) uint32 {
	if dir&1 == 0 {
		return b.edges[dir>>1].to
	}
	return b.edges[dir>>1].from
}

// leavingOf lists the directions out of every junction, ascending.
func (b *maker) leavingOf() {
	b.leaving = order.NewGraph(len(b.at), func(add func(tail, dir uint32)) {
		for e := range b.edges {
			for back := range uint32(2) {
				if dir := uint32(e)<<1 | back; b.mayDrive(dir) {
					add(b.headOf(dir^1), dir)
				}
			}
		}
	})
}
