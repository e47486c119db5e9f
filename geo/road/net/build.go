package net

import (
	"context"
	"fmt"
	"math"

	"ullage/geo/road/order"
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
	rank, err := order.Nested(ctx, n.undirected(), n.flat())
	if err != nil {
		return nil, err
	}
	n = n.renumbered(rank)
	n.joinArcs()
	n.cch, _ = order.Contract(n.neighboursAbove(), math.MaxInt)
	n.boxes = newBoxes(n.Edges(), n.eachPoint)
	return n, ctx.Err()
}

// network puts the parts together, in the order of the input.
func (b *maker) network() *Network {
	n := &Network{at: b.at, roads: b.roads, date: b.in.Date, omitted: b.omitted, bends: b.bends}
	n.shape = make([]uint32, 1, len(b.edges)+1)
	for _, e := range b.edges {
		n.from, n.to = append(n.from, e.from), append(n.to, e.to)
		n.cm, n.road, n.shape = append(n.cm, e.cm), append(n.road, e.road), append(n.shape, e.bendEnd)
	}
	n.doubts = b.doubts
	list := b.histories()
	for _, h := range list {
		c := Coming{plain: b.headOf(h.in), State: uint32(len(n.at)), in: h.in, bans: b.bans(h)}
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
