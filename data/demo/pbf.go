package demo

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"math"
	"slices"
)

// This file writes OpenStreetMap's PBF format: a file of blobs, each with its
// length in four bytes, a header and zlib-packed protocol buffer bytes. Field
// numbers are those of fileformat.proto and osmformat.proto, described at
// https://wiki.openstreetmap.org/wiki/PBF_Format.

// perBlock is how many objects share a block: the format's usual limit.
const perBlock = 8000

// A message is a protocol buffer in the making.
type message []byte

func (m *message) varint(field int, v uint64) {
	*m = binary.AppendUvarint(*m, uint64(field)<<3)
	*m = binary.AppendUvarint(*m, v)
}

func (m *message) bytes(field int, b []byte) {
	*m = binary.AppendUvarint(*m, uint64(field)<<3|2)
	*m = binary.AppendUvarint(*m, uint64(len(b)))
	*m = append(*m, b...)
}

// packed writes numbers as one packed field.
func (m *message) packed(field int, vs []uint64) {
	var b []byte
	for _, v := range vs {
		b = binary.AppendUvarint(b, v)
	}
	m.bytes(field, b)
}

// deltas writes numbers as packed zigzag differences.
func (m *message) deltas(field int, vs []int64) {
	out, last := make([]uint64, len(vs)), int64(0)
	for i, v := range vs {
		d := v - last
		out[i], last = uint64(d<<1)^uint64(d>>63), v
	}
	m.packed(field, out)
}

// A stringTable numbers the strings of one block; number 0 is the delimiter.
type stringTable struct {
	index map[string]uint64
	list  []string
}

func newStringTable() *stringTable {
	return &stringTable{index: map[string]uint64{"": 0}, list: []string{""}}
}

func (t *stringTable) number(s string) uint64 {
	n, ok := t.index[s]
	if !ok {
		n = uint64(len(t.list))
		t.index[s], t.list = n, append(t.list, s)
	}
	return n
}

func (t *stringTable) message() (m message) {
	for _, s := range t.list {
		m.bytes(1, []byte(s))
	}
	return m
}

// keysAndValues numbers tags in order of key.
func (t *stringTable) keysAndValues(tags tags) (keys, values []uint64) {
	for _, k := range tags.keys() {
		keys, values = append(keys, t.number(k)), append(values, t.number(tags[k]))
	}
	return keys, values
}

// encode writes the world, nodes then ways then relations, each by id.
func encode(w *world, replication int64) []byte {
	var out bytes.Buffer
	writeBlob(&out, "OSMHeader", headerBlock(w, replication))
	for part := range slices.Chunk(w.nodes, perBlock) {
		t := newStringTable()
		writeBlob(&out, "OSMData", primitiveBlock(t, denseNodes(t, part)))
	}
	for part := range slices.Chunk(w.ways, perBlock) {
		t := newStringTable()
		writeBlob(&out, "OSMData", primitiveBlock(t, waysGroup(t, part)))
	}
	for part := range slices.Chunk(w.relations, perBlock) {
		t := newStringTable()
		writeBlob(&out, "OSMData", primitiveBlock(t, relationsGroup(t, part)))
	}
	return out.Bytes()
}

func writeBlob(out *bytes.Buffer, kind string, content message) {
	var packed bytes.Buffer
	z, err := zlib.NewWriterLevel(&packed, zlib.BestCompression)
	if err != nil {
		panic("demo: " + err.Error())
	}
	z.Write(content) // a bytes.Buffer takes everything
	z.Close()

	var blob, header message
	blob.varint(2, uint64(len(content)))
	blob.bytes(3, packed.Bytes())
	header.bytes(1, []byte(kind))
	header.varint(3, uint64(len(blob)))
	out.Write(binary.BigEndian.AppendUint32(nil, uint32(len(header))))
	out.Write(header)
	out.Write(blob)
}

func headerBlock(w *world, replication int64) (m message) {
	zigzag := func(v int64) uint64 { return uint64(v<<1) ^ uint64(v>>63) }
	west, south, east, north := w.bounds()
	var box message
	for i, v := range []int64{west, east, north, south} {
		box.varint(i+1, zigzag(v*100)) // nanodegrees
	}
	m.bytes(1, box)
	m.bytes(4, []byte("OsmSchema-V0.6"))
	m.bytes(4, []byte("DenseNodes"))
	m.bytes(5, []byte("Sort.Type_then_ID"))
	m.bytes(16, []byte("ullage demo"))
	m.varint(32, uint64(replication))
	return m
}

// primitiveBlock uses the format's default granularity of 100 nanodegrees.
func primitiveBlock(t *stringTable, group message) (m message) {
	m.bytes(1, t.message())
	m.bytes(2, group)
	return m
}

func denseNodes(t *stringTable, nodes []node) (group message) {
	var ids, lats, lons []int64
	var kv []uint64
	for _, n := range nodes {
		ids, lats, lons = append(ids, n.id), append(lats, n.lat), append(lons, n.lon)
		keys, values := t.keysAndValues(n.tags)
		for i := range keys {
			kv = append(kv, keys[i], values[i])
		}
		kv = append(kv, 0)
	}
	var dense message
	dense.deltas(1, ids)
	dense.deltas(8, lats)
	dense.deltas(9, lons)
	dense.packed(10, kv)
	group.bytes(2, dense)
	return group
}

func waysGroup(t *stringTable, ways []way) (group message) {
	for _, w := range ways {
		var m message
		m.varint(1, uint64(w.id))
		keys, values := t.keysAndValues(w.tags)
		m.packed(2, keys)
		m.packed(3, values)
		m.deltas(8, w.refs)
		group.bytes(3, m)
	}
	return group
}

func relationsGroup(t *stringTable, relations []relation) (group message) {
	for _, r := range relations {
		var m message
		m.varint(1, uint64(r.id))
		keys, values := t.keysAndValues(r.tags)
		m.packed(2, keys)
		m.packed(3, values)
		var roles, types []uint64
		var ids []int64
		for _, member := range r.members {
			roles, ids, types = append(roles, t.number(member.role)), append(ids, member.way), append(types, 1)
		}
		m.packed(8, roles)
		m.deltas(9, ids)
		m.packed(10, types)
		group.bytes(4, m)
	}
	return group
}

// bounds is the box of all nodes in units of 1e-7 degrees.
func (w *world) bounds() (west, south, east, north int64) {
	west, south, east, north = math.MaxInt64, math.MaxInt64, math.MinInt64, math.MinInt64
	for _, n := range w.nodes {
		west, east = min(west, n.lon), max(east, n.lon)
		south, north = min(south, n.lat), max(north, n.lat)
	}
	return west, south, east, north
}
