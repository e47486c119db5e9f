package net

import (
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"hash/crc32"
	"math"
	"slices"

	"ullage/geo/road/order"
)

// ErrCoded says that bytes are not the coded form of a network.
var ErrCoded = errors.New("road: not a road network of this program")

// Decode returns the network of a coded form, with its hierarchy built again. b is kept unchanged. Errors: [ErrCoded] with the
// reason: another file, another version, a byte changed, numbers that do not fit each other. Cost about 1 µs a junction.
func Decode(ctx context.Context, b []byte) (*Network, error) {
	switch {
	case len(b) < len(magic)+5 || string(b[:len(magic)]) != magic:
		return nil, ErrCoded
	case b[len(magic)] != version:
		return nil, fmt.Errorf("%w: version %d, this program reads %d", ErrCoded, b[len(magic)], version)
	}
	body := b[:len(b)-4]
	if crc32.ChecksumIEEE(body) != binary.LittleEndian.Uint32(b[len(b)-4:]) {
		return nil, fmt.Errorf("%w: the checksum differs, the file is damaged or cut off", ErrCoded)
	}
	r := reader{b: body[len(magic)+1:]}
	n := r.network()
	if r.bad || len(r.b) > 0 {
		return nil, fmt.Errorf("%w: its numbers do not fit each other", ErrCoded)
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	n.joinArcs()
	var ok bool
	if n.cch, ok = order.Contract(n.neighboursAbove(), mostArcs(len(n.at))); !ok {
		return nil, fmt.Errorf("%w: its junctions are not in an order that suits roads", ErrCoded)
	}
	n.boxes = newBoxes(n.Edges(), n.eachPoint)
	return n, ctx.Err()
}

// mostArcs bounds the hierarchy of a file: roads make about 12 arcs a state, a hostile file could make millions.
func mostArcs(states int) int { return 100*states + 1_000_000 }

type reader struct {
	b   []byte
	bad bool
}

func (r *reader) number(most uint64) uint64 {
	v, k := binary.Uvarint(r.b)
	if k <= 0 || v > most {
		r.fail()
		return 0
	}
	r.b = r.b[k:]
	return v
}

func (r *reader) signed() int64 {
	v, k := binary.Varint(r.b)
	if k <= 0 || v > math.MaxUint32 || v < -math.MaxUint32 {
		r.fail()
		return 0
	}
	r.b = r.b[k:]
	return v
}

// count reads how many things follow, each of at least size bytes.
func (r *reader) count(size int) int {
	v := r.number(math.MaxInt32)
	if v > uint64(len(r.b)/size) {
		r.fail()
		return 0
	}
	return int(v)
}

func (r *reader) text() string {
	k := r.count(1)
	s := string(r.b[:k])
	r.b = r.b[k:]
	return s
}

// fail gives up: nothing more is read.
func (r *reader) fail() { r.bad, r.b = true, nil }

func (r *reader) network() *Network {
	n := &Network{date: r.text()}
	if r.count(1) != len(n.omitted) {
		r.fail()
	}
	for i := range n.omitted {
		n.omitted[i] = int(r.number(math.MaxInt32))
	}
	n.roads = make([]Road, r.count(14))
	for i := range n.roads {
		r.road(&n.roads[i])
	}
	r.states(n)
	r.edges(n)
	r.comings(n)
	r.onward(n)
	r.doubts(n)
	return n
}

func (r *reader) states(n *Network) {
	n.at = make([]Pos, r.count(2))
	lon, lat := int64(0), int64(0)
	for i := range n.at {
		lon, lat = lon+r.signed(), lat+r.signed()
		if lon < -180e7 || lon > 180e7 || lat < -90e7 || lat > 90e7 {
			r.fail()
			return
		}
		n.at[i] = Pos{int32(lon), int32(lat)}
	}
}

func (r *reader) edges(n *Network) {
	edges, states := r.count(5), int64(len(n.at))
	if edges == 0 || len(n.roads) == 0 {
		r.fail()
		return
	}
	n.from, n.to, n.cm, n.road = make([]uint32, edges), make([]uint32, edges), make([]uint32, edges), make([]uint32, edges)
	n.shape = make([]uint32, edges+1)
	from, shape := int64(0), uint64(0)
	for e := range edges {
		from += r.signed()
		to := from + r.signed()
		n.cm[e] = uint32(r.number(MaxCost / 2))
		n.road[e] = uint32(r.number(uint64(len(n.roads)) - 1))
		shape += r.number(uint64(len(r.b)))
		if r.bad || from < 0 || from >= states || to < 0 || to >= states || n.cm[e] == 0 || shape > uint64(len(r.b)) {
			r.fail()
			return
		}
		n.from[e], n.to[e], n.shape[e+1] = uint32(from), uint32(to), uint32(shape)
	}
	n.bends = slices.Clone(r.b[:shape])
	r.b = r.b[shape:]
}

// comings reads the further states of junctions, of which none is a junction.
func (r *reader) comings(n *Network) {
	states, directions := int64(len(n.at)), uint64(2*len(n.from))
	plain := int64(0)
	own := make(map[uint32]bool)
	for range r.count(4) {
		plain += int64(r.number(math.MaxUint32))
		state := plain + r.signed()
		in := uint32(r.number(directions - 1))
		if r.bad || plain >= states || state < 0 || state >= states || own[uint32(state)] || int64(n.TailOf(in^1)) != plain || n.barred(in) {
			r.fail()
			return
		}
		c := Coming{plain: uint32(plain), State: uint32(state), in: in}
		own[c.State] = true
		r.bans(n, &c)
		n.extra = append(n.extra, c)
	}
	for e := range n.from {
		if own[n.from[e]] || own[n.to[e]] {
			r.fail()
			return
		}
	}
}

// bans reads what is forbidden after a coming: directions out of its junction that are there, each once.
func (r *reader) bans(n *Network, c *Coming) {
	directions := uint64(2 * len(n.from))
	for range r.count(1) {
		b := uint32(r.number(heavyOnly + directions))
		if dir := b &^ heavyOnly; uint64(dir) >= directions || n.TailOf(dir) != c.plain || n.barred(dir) || slices.Contains(c.bans, dir) ||
			slices.Contains(c.bans, dir|heavyOnly) {
			r.fail()
			return
		}
		c.bans = append(c.bans, b)
	}
}

func (r *reader) onward(n *Network) {
	comings, from := uint64(len(n.extra)), uint64(0)
	for range r.count(3) {
		from += r.number(comings)
		dir, to := uint32(r.number(uint64(2*len(n.from)-1))), r.number(comings)
		if r.bad || from >= comings || to >= comings || n.extra[to].in != dir || n.TailOf(dir) != n.extra[from].plain {
			r.fail()
			return
		}
		n.onward = append(n.onward, onward{uint32(from), dir, uint32(to)})
	}
}

func (r *reader) doubts(n *Network) {
	for range r.count(5) {
		d := doubt{text: r.text()}
		kind := r.number(3)
		d.only, d.heavy = kind&1 != 0, kind&2 != 0
		for range r.count(1) {
			d.dirs = append(d.dirs, uint32(r.number(uint64(2*len(n.from)-1))))
		}
		if len(d.dirs) < 2 {
			r.fail()
			return
		}
		n.doubts = append(n.doubts, d)
	}
}

// barred says that nobody may drive a direction.
func (n *Network) barred(dir uint32) bool {
	return n.roads[n.road[dir>>1]].Access[dir&1] == Closed
}

func (r *reader) road(x *Road) {
	x.Name, x.Unclear = r.text(), r.text()
	x.Class = Class(r.number(uint64(classes) - 1))
	x.Access[0], x.Access[1] = Access(r.number(uint64(Closed))), Access(r.number(uint64(Closed)))
	x.Heavy = Access(r.number(uint64(Closed)))
	x.Flags = Flags(r.number(math.MaxUint16))
	l := &x.Limits
	for _, v := range [...]*uint16{&l.HeightCm, &l.WidthCm, &l.LengthCm, &l.Mass10Kg, &l.Axle10Kg} {
		*v = uint16(r.number(math.MaxUint16))
	}
	for i := range x.Kmh {
		x.Kmh[i] = math.Float32frombits(uint32(r.number(math.MaxUint32)))
		if v := x.Kmh[i]; !(v >= 0 && v < 1000) {
			r.bad = true
		}
	}
}
