package net

import (
	"math"
	"slices"

	"ullage/geo/road/order"
)

// renumbered numbers states by rank, and edges by the lower of their ends. Without arcs.
func (n *Network) renumbered(rank []uint32) *Network {
	m := &Network{at: make([]Pos, len(n.at)), roads: n.roads, date: n.date, omitted: n.omitted}
	for s, r := range rank {
		m.at[r] = n.at[s]
	}
	// Sorting numbers of one kind everywhere keeps the program small and is faster: the key above, what it is of below.
	order := make([]uint64, len(n.from)) // new number → old, below the lower rank
	for e := range order {
		order[e] = uint64(min(rank[n.from[e]], rank[n.to[e]]))<<32 | uint64(e)
	}
	slices.Sort(order)
	edges := len(order)
	m.from, m.to, m.cm, m.road = make([]uint32, edges), make([]uint32, edges), make([]uint32, edges), make([]uint32, edges)
	m.shape, m.bends = make([]uint32, edges+1), make([]byte, 0, len(n.bends))
	number := make([]uint32, edges)
	for i, key := range order {
		o := uint32(key)
		number[o] = uint32(i)
		m.from[i], m.to[i], m.cm[i], m.road[i] = rank[n.from[o]], rank[n.to[o]], n.cm[o], n.road[o]
		m.bends = append(m.bends, n.bends[n.shape[o]:n.shape[o+1]]...)
		m.shape[i+1] = uint32(len(m.bends))
	}
	renamed := func(dir uint32) uint32 { return dir&heavyOnly | number[dir&^heavyOnly>>1]<<1 | dir&1 }
	sorted := make([]uint64, len(n.extra))
	for i, c := range n.extra {
		sorted[i] = uint64(rank[c.plain])<<32 | uint64(i)
	}
	slices.Sort(sorted)
	place := make([]uint32, len(sorted)) // old index → new
	for i, key := range sorted {
		place[uint32(key)] = uint32(i)
		c := n.extra[uint32(key)]
		x := Coming{plain: rank[c.plain], State: rank[c.State], in: renamed(c.in)}
		for _, b := range c.bans {
			x.bans = append(x.bans, renamed(b))
		}
		slices.Sort(x.bans)
		m.extra = append(m.extra, x)
	}
	for _, d := range n.doubts {
		x := doubt{nil, d.only, d.heavy, d.text}
		for _, dir := range d.dirs {
			x.dirs = append(x.dirs, renamed(dir))
		}
		m.doubts = append(m.doubts, x)
	}
	keys := make([]uint64, len(n.onward))
	for i, o := range n.onward {
		keys[i] = uint64(place[o.from])<<32 | uint64(i)
	}
	slices.Sort(keys)
	for _, key := range keys {
		o := n.onward[uint32(key)]
		m.onward = append(m.onward, onward{place[o.from], renamed(o.dir), place[o.to]})
	}
	return m
}

// flat puts the states on a map on which a unit is as long in all directions.
func (n *Network) flat() []order.Place {
	sum := 0.0
	for _, p := range n.at {
		sum += float64(p.Lat) / 1e7
	}
	squeeze := math.Cos(sum / float64(max(1, len(n.at))) * math.Pi / 180)
	list := make([]order.Place, len(n.at))
	for s, p := range n.at {
		list[s] = order.Place{X: int32(float64(p.Lon) / 2 * squeeze), Y: p.Lat / 2}
	}
	return list
}
