package road

import (
	"math"

	"github.com/paulmach/orb"
)

// A Network is a road network, immutable and safe for use by many goroutines. Made by [Build] or [Decode].
//
// Its nodes are states: one for each junction, and one more for each way of coming to a junction from where some turn is
// forbidden. States are numbered in the order of contraction. An edge is a stretch of road between two junctions; an arc is
// an edge driven in one direction from one state to another.
type Network struct {
	at     []spot // where a state is
	first  []uint32
	head   []uint32 // arc → state that it leads to
	edge   []uint32 // arc → edge<<1 | 1 if against the edge's direction; heavyOnly marks arcs closed to heavy vehicles
	from   []uint32 // edge → plain state at its start
	to     []uint32 // edge → plain state at its end
	cm     []uint32 // edge → length
	road   []uint32 // edge → index in roads
	shape  []uint32 // edge → where its inner points begin in bends; one more at the end
	bends  []byte   // inner points as differences from the point before, see [appendBend]
	roads  []Road
	extra  []coming // by plain state: the states of junctions where turns are forbidden
	onward []onward // by coming: where turns are forbidden over ways between
	doubts []doubt
	cch    hierarchy
	boxes  boxes
	date   string
	notes  []string
}

// heavyOnly marks an arc that only vehicles up to [HeavyT] may take: a turn forbidden to heavy ones.
const heavyOnly = 1 << 31

// A coming is the state of who has come to a junction by a direction with forbidden turns. bans are the directions out of it
// that are forbidden, with heavyOnly those that are forbidden to heavy vehicles.
type coming struct {
	plain, state, in uint32
	bans             []uint32
}

// An onward says that who drives a direction on from a coming is in another coming than who has driven it from elsewhere: he is
// on a way over which a turn is forbidden.
type onward struct{ from, dir, to uint32 } // from and to: index in extra

// A spot is a position in 1e-7 degrees.
type spot struct{ lon, lat int32 }

func spotOf(p orb.Point) spot {
	return spot{int32(math.Round(p[0] * 1e7)), int32(math.Round(p[1] * 1e7))}
}

func (s spot) point() orb.Point { return orb.Point{float64(s.lon) / 1e7, float64(s.lat) / 1e7} }

// States returns the number of states: junctions, ends, changes of a road, and forbidden turns.
func (n *Network) States() int { return len(n.at) }

// Edges returns the number of stretches of road.
func (n *Network) Edges() int { return len(n.from) }

// Date is the day of the data as stated; "" if unknown.
func (n *Network) Date() string { return n.date }

// Notes say what was left out of the network and why.
func (n *Network) Notes() []string { return n.notes }

// Road returns what holds along an edge. It panics if there is no such edge.
func (n *Network) Road(edge uint32) Road { return n.roads[n.road[edge]] }

// LengthCm returns the length of an edge. It panics if there is no such edge.
func (n *Network) LengthCm(edge uint32) uint32 { return n.cm[edge] }

// Bytes returns the memory of the network in bytes, without names.
func (n *Network) Bytes() int {
	b := 8*len(n.at) + 4*(len(n.first)+len(n.head)+len(n.edge)) + 4*(len(n.from)+len(n.to)+len(n.cm)+len(n.road)+len(n.shape)) +
		len(n.bends) + 64*len(n.roads) + 64*len(n.extra) + 12*len(n.onward)
	return b + n.cch.bytes() + n.boxes.bytes()
}

// inner calls fn with the inner points of an edge, from its start to its end.
func (n *Network) inner(edge uint32, fn func(spot)) {
	b := n.bends[n.shape[edge]:n.shape[edge+1]]
	p := n.at[n.from[edge]]
	for len(b) > 0 {
		var dx, dy int32
		dx, b = takeBend(b)
		dy, b = takeBend(b)
		p.lon, p.lat = p.lon+dx, p.lat+dy
		fn(p)
	}
}

// points returns the line of an edge from its start to its end.
func (n *Network) points(edge uint32) []spot {
	list := []spot{n.at[n.from[edge]]}
	n.inner(edge, func(p spot) { list = append(list, p) })
	return append(list, n.at[n.to[edge]])
}

// appendBend appends a difference as a zigzag varint.
func appendBend(b []byte, d int32) []byte {
	v := uint32(d)<<1 ^ uint32(d>>31)
	for v >= 0x80 {
		b = append(b, byte(v)|0x80)
		v >>= 7
	}
	return append(b, byte(v))
}

func takeBend(b []byte) (int32, []byte) {
	var v uint32
	for i, shift := 0, 0; i < len(b); i, shift = i+1, shift+7 {
		v |= uint32(b[i]&0x7f) << shift
		if b[i] < 0x80 {
			return int32(v>>1) ^ -int32(v&1), b[i+1:]
		}
	}
	return 0, nil
}
