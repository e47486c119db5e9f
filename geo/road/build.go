package road

import (
	"context"
	"fmt"
	"math"
	"slices"

	"github.com/paulmach/orb"

	"ullage/geo"
)

// Build makes the network of an input, in one pass over its ways, and the order of its junctions for all vehicles and aims.
//
// Roads that are closed to everybody are left out. Turns that do not fit the ways are left out and counted in
// [Network.Notes]. Errors: an input without usable roads, a way with a node that is not there, a position off the earth.
// Cost about O(n^1.1): see bench_test.go; memory about 0.6 kB per junction while building.
func Build(ctx context.Context, in Input) (*Network, error) {
	b := &maker{in: in}
	if err := b.cutWays(); err != nil {
		return nil, err
	}
	if len(b.edges) == 0 {
		return nil, fmt.Errorf("road: no roads for vehicles in the data")
	}
	b.leavingOf()
	b.forbidTurns()
	b.forbidTurningBack()
	n := b.network()
	n.joinArcs()
	rank, err := nestedOrder(ctx, n.undirected(), n.at)
	if err != nil {
		return nil, err
	}
	n = n.renumbered(rank)
	n.joinArcs()
	n.cch = newHierarchy(n)
	n.boxes = newBoxes(n)
	return n, ctx.Err()
}

// A maker holds what is known while the network is made. Junctions come first among its states.
type maker struct {
	in    Input
	at    []spot // by state
	edges []rawEdge
	ends  map[int64][2]int32 // first and last edge of the ways that turns name
	junct []int32            // input node → junction + 1; 0 if none
	roads []Road
	known map[Road]uint32
	bends []byte

	comes   map[uint32]*history // arriving direction → what matters afterwards
	leaving graph               // junction → directions out of it
	doubts  []doubt
	notes   []string
}

type rawEdge struct {
	from, to, cm, road, bend uint32 // bend: where its inner points begin
	bendEnd                  uint32
}

// leavingOf lists the directions out of every junction, ascending.
func (b *maker) leavingOf() {
	first := make([]uint32, len(b.at)+1)
	each := func(fn func(tail, dir uint32)) {
		for e := range b.edges {
			for back := range uint32(2) {
				if dir := uint32(e)<<1 | back; b.mayDrive(dir) {
					fn(b.headOf(dir^1), dir)
				}
			}
		}
	}
	each(func(tail, _ uint32) { first[tail+1]++ })
	for j := range b.at {
		first[j+1] += first[j]
	}
	b.leaving = graph{first, make([]uint32, first[len(b.at)])}
	fill := slices.Clone(first)
	each(func(tail, dir uint32) {
		b.leaving.head[fill[tail]] = dir
		fill[tail]++
	})
}

func (b *maker) outOf(j uint32) []uint32 {
	return b.leaving.head[b.leaving.first[j]:b.leaving.first[j+1]]
}

// cutWays cuts the ways at junctions and puts barriers between.
func (b *maker) cutWays() error {
	b.known = map[Road]uint32{}
	b.ends = map[int64][2]int32{}
	for _, t := range b.in.Turns {
		b.ends[t.From], b.ends[t.To] = [2]int32{-1, -1}, [2]int32{-1, -1}
		for _, way := range t.Over {
			b.ends[way] = [2]int32{-1, -1}
		}
	}
	// 1. How often each node is used, up to 2: a junction is an end of a way, or where ways meet.
	uses := make([]uint8, len(b.in.Nodes))
	for _, w := range b.in.Ways {
		if w.Road.closed() {
			continue
		}
		for i, v := range w.Nodes {
			if v < 0 || int(v) >= len(b.in.Nodes) {
				return fmt.Errorf("road: way %d goes through node %d, of %d", w.ID, v, len(b.in.Nodes))
			}
			if p := b.in.Nodes[v].Point; !(math.Abs(p[0]) <= 180 && math.Abs(p[1]) <= 90) {
				return fmt.Errorf("road: way %d goes through %v, %v: no place on earth", w.ID, p[0], p[1])
			}
			if uses[v]++; i == 0 || i == len(w.Nodes)-1 || uses[v] > 2 {
				uses[v] = 2
			}
		}
	}
	// 2. Cut.
	b.junct = make([]int32, len(b.in.Nodes))
	gates := map[int32][]uint32{} // node with a barrier → its ends of road
	corner := func(v int32) uint32 {
		if b.in.Nodes[v].Gate != nil {
			gates[v] = append(gates[v], b.corner(v))
			return gates[v][len(gates[v])-1]
		}
		if b.junct[v] == 0 {
			b.junct[v] = int32(b.corner(v)) + 1
		}
		return uint32(b.junct[v] - 1)
	}
	for _, w := range b.in.Ways {
		if w.Road.closed() || len(w.Nodes) < 2 {
			continue
		}
		road := b.roadIndex(w.Road)
		first := len(b.edges)
		from, start := corner(w.Nodes[0]), 0
		for i := 1; i < len(w.Nodes); i++ {
			v := w.Nodes[i]
			if i < len(w.Nodes)-1 && uses[v] < 2 && b.in.Nodes[v].Gate == nil {
				continue
			}
			to := corner(v)
			b.addEdge(from, to, road, w.Nodes[start:i+1])
			from, start = to, i
			if i < len(w.Nodes)-1 && b.in.Nodes[v].Gate != nil {
				from = corner(v) // beyond the barrier
			}
		}
		if ends, ok := b.ends[w.ID]; ok {
			if ends[0] < 0 { // a way may come in several pieces, in order
				ends[0] = int32(first)
			}
			b.ends[w.ID] = [2]int32{ends[0], int32(len(b.edges) - 1)}
		}
	}
	// 3. Barriers join what they part, unless they are closed. Several ends meet in a middle.
	for i := range b.in.Nodes {
		v := int32(i)
		if gates[v] == nil {
			continue
		}
		ends, gate := gates[v], b.in.Nodes[v].Gate
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
	return nil
}

func (b *maker) corner(v int32) uint32 {
	b.at = append(b.at, spotOf(b.in.Nodes[v].Point))
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
		if s := spotOf(b.in.Nodes[nodes[i]].Point); i < len(nodes)-1 && s != last {
			b.bends = appendBend(appendBend(b.bends, s.lon-last.lon), s.lat-last.lat)
			last = s
		}
	}
	e.bendEnd = uint32(len(b.bends))
	e.cm = uint32(min(max(1, math.Round(length*100)), maxCost/2))
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

// network puts the parts together, in the order of the input.
func (b *maker) network() *Network {
	n := &Network{at: b.at, roads: b.roads, date: b.in.Date, notes: append(slices.Clone(b.in.Notes), b.notes...), bends: b.bends}
	n.shape = make([]uint32, 1, len(b.edges)+1)
	for _, e := range b.edges {
		n.from, n.to = append(n.from, e.from), append(n.to, e.to)
		n.cm, n.road, n.shape = append(n.cm, e.cm), append(n.road, e.road), append(n.shape, e.bendEnd)
	}
	n.doubts = b.doubts
	list := b.histories()
	for _, h := range list {
		c := coming{plain: b.headOf(h.in), state: uint32(len(n.at)), in: h.in, bans: b.bans(h)}
		n.at = append(n.at, n.at[c.plain])
		n.extra = append(n.extra, c)
	}
	for i, h := range list {
		known := map[uint32]bool{}
		for s := h; s != nil; s = s.shorter {
			for _, x := range s.longer {
				if !known[x.in] {
					known[x.in] = true
					n.onward = append(n.onward, onward{uint32(i), x.in, x.number})
				}
			}
		}
	}
	return n
}

// lineOf turns spots into points.
func lineOf(list []spot) orb.LineString {
	ls := make(orb.LineString, len(list))
	for i, s := range list {
		ls[i] = s.point()
	}
	return ls
}
