package net

import (
	"ullage/geo/road/order"
)

// MaxCost is the greatest cost of a way: whole milliseconds or centimetres, 24 days or 21,474 km. Two of them add without
// overflow.
const MaxCost = 1<<31 - 1

// heavyOnly marks an arc that only vehicles up to [HeavyT] may take: a turn forbidden to heavy ones.
const heavyOnly = 1 << 31

// A Network is a road network, immutable and safe for use by many goroutines. Made by [Build] or [Decode].
//
// Its nodes are states: one for each junction, and one more for each way of coming to a junction from where some turn is
// forbidden. States are numbered in the order of contraction. An edge is a stretch of road between two junctions; an arc is
// an edge driven in one direction from one state to another.
type Network struct {
	at      []Pos // where a state is
	first   []uint32
	head    []uint32 // arc → state that it leads to
	edge    []uint32 // arc → edge<<1 | 1 if against the edge's direction; heavyOnly marks arcs closed to heavy vehicles
	from    []uint32 // edge → plain state at its start
	to      []uint32 // edge → plain state at its end
	cm      []uint32 // edge → length
	road    []uint32 // edge → index in roads
	shape   []uint32 // edge → where its inner points begin in bends; one more at the end
	bends   []byte   // inner points as differences from the point before, see [appendBend]
	roads   []Road
	extra   []Coming // by plain state: the states of junctions where turns are forbidden
	onward  []onward // by coming: where turns are forbidden over ways between
	doubts  []doubt
	cch     order.Hierarchy
	boxes   boxes
	date    string
	omitted Omitted
}

// A Coming is the state of who has come to a junction by a direction with forbidden turns. State has the arcs that
// are not forbidden then.
type Coming struct {
	State     uint32
	plain, in uint32   // the junction's own state, and the direction
	bans      []uint32 // directions out of the junction; with heavyOnly those that are forbidden to heavy vehicles
}

// An onward says that who drives a direction on from a coming is in another coming than who has driven it from elsewhere: he is
// on a way over which a turn is forbidden.
type onward struct{ from, dir, to uint32 } // from and to: index in extra

// A doubt is a turn that is forbidden at times: the directions driven, or with only those of which none may be left out.
type doubt struct {
	dirs        []uint32
	only, heavy bool
	text        string
}

// States returns the number of states: junctions, ends, changes of a road, and forbidden turns.
func (n *Network) States() int { return len(n.at) }

// Edges returns the number of stretches of road.
func (n *Network) Edges() int { return len(n.from) }

// Date is the day of the data as stated; "" if unknown.
func (n *Network) Date() string { return n.date }

// Omitted counts what was left out of the network.
func (n *Network) Omitted() Omitted { return n.omitted }

// Bytes returns the memory of the network in bytes, without names.
func (n *Network) Bytes() int {
	b := 8*len(n.at) + 4*(len(n.first)+len(n.head)+len(n.edge)) + 4*(len(n.from)+len(n.to)+len(n.cm)+len(n.road)+len(n.shape)) +
		len(n.bends) + 64*len(n.roads) + 64*len(n.extra) + 12*len(n.onward)
	return b + n.cch.Bytes() + n.boxes.bytes()
}

// Hierarchy returns the states above each state, which must not be changed.
func (n *Network) Hierarchy() *order.Hierarchy { return &n.cch }

// The methods below panic for a state, an arc or an edge that is not there.

// Pos returns where a state is.
func (n *Network) Pos(state uint32) Pos { return n.at[state] }

// Arcs returns the first and one past the last arc out of a state. Arcs of a state have different directions.
func (n *Network) Arcs(s uint32) (lo, hi uint32) { return n.first[s], n.first[s+1] }

// Head returns the state that an arc leads to.
func (n *Network) Head(arc uint32) uint32 { return n.head[arc] }

// Dir returns the direction that an arc drives: edge<<1, plus 1 against the edge.
func (n *Network) Dir(arc uint32) uint32 { return n.edge[arc] &^ heavyOnly }

// IsLightOnly says that only vehicles up to [HeavyT] may take an arc: a turn forbidden to heavy ones.
func (n *Network) IsLightOnly(arc uint32) bool { return n.edge[arc]&heavyOnly != 0 }

// From returns the junction at the start of an edge.
func (n *Network) From(edge uint32) uint32 { return n.from[edge] }

// To returns the junction at the end of an edge.
func (n *Network) To(edge uint32) uint32 { return n.to[edge] }

// TailOf returns the junction from which a direction sets out. The one that it leads to is TailOf(dir^1).
func (n *Network) TailOf(dir uint32) uint32 {
	if dir&1 == 0 {
		return n.from[dir>>1]
	}
	return n.to[dir>>1]
}

// LengthCm returns the length of an edge, from 1 to MaxCost/2.
func (n *Network) LengthCm(edge uint32) uint32 { return n.cm[edge] }

// Road returns what holds along an edge, which must not be changed.
func (n *Network) Road(edge uint32) *Road { return &n.roads[n.road[edge]] }

// Roads lists all that holds along some edge, each once; they must not be changed.
func (n *Network) Roads() []Road { return n.roads }

// RoadIndex returns the place in [Network.Roads] of what holds along an edge.
func (n *Network) RoadIndex(edge uint32) uint32 { return n.road[edge] }

// EdgesIn calls fn with the edges whose boxes meet a box, ascending: all that have a point in it and some others.
func (n *Network) EdgesIn(b Box, fn func(edge uint32)) { n.boxes.each(b, len(n.from), fn) }

// Inner calls fn with the inner points of an edge, from its start to its end.
func (n *Network) Inner(edge uint32, fn func(Pos)) {
	b := n.bends[n.shape[edge]:n.shape[edge+1]]
	p := n.at[n.from[edge]]
	for len(b) > 0 {
		var dx, dy int32
		dx, b = takeBend(b)
		dy, b = takeBend(b)
		p.Lon, p.Lat = p.Lon+dx, p.Lat+dy
		fn(p)
	}
}

// eachPoint calls fn with all points of an edge, from its start to its end.
func (n *Network) eachPoint(edge uint32, fn func(Pos)) {
	fn(n.at[n.from[edge]])
	n.Inner(edge, fn)
	fn(n.at[n.to[edge]])
}

// Points returns the line of an edge from its start to its end.
func (n *Network) Points(edge uint32) []Pos {
	list := []Pos{n.at[n.from[edge]]}
	n.Inner(edge, func(p Pos) { list = append(list, p) })
	return append(list, n.at[n.to[edge]])
}
