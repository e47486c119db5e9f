package osm

import "github.com/paulmach/orb"

// This file decodes the objects of one unpacked PBF block, and only those that somebody wants.
// Source: osmformat.proto of the PBF format (github.com/openstreetmap/OSM-binary).

// kinds of objects in a block, as bits
const (
	hasNodes = 1 << iota
	hasWays
	hasRelations
)

// A block is an unpacked block with its strings looked at.
type block struct {
	strings [][]byte
	groups  [][]byte
	keys    []uint64 // per string: bit i is set if it is the key of want[i]
	values  []uint64 // per string: bit i is set if it is, or may be, the value of want[i]
	any     uint64   // bits of wants for which the block has both strings
	kinds   int

	granularity, latOffset, lonOffset int64 // nanodegrees
	dateGranularity                   int64 // milliseconds

	hits []hit  // buffer
	list []Node // buffer
}

// lookup finds out which strings of the block are wanted.
type lookup struct {
	keys   map[string]uint64
	values map[string]uint64
	every  uint64 // wants that take every value
}

func newLookup(want Want) lookup {
	if len(want) > 64 {
		panic("osm: more than 64 wanted tags")
	}
	l := lookup{keys: map[string]uint64{}, values: map[string]uint64{}}
	for i, t := range want {
		l.keys[t.Key] |= 1 << i
		if t.Value == "" {
			l.every |= 1 << i
		} else {
			l.values[t.Value] |= 1 << i
		}
	}
	return l
}

// open reads the frame of a block: strings, groups, scale. data must stay unchanged while the block is used.
func (b *block) open(data []byte, l lookup) (ok bool) {
	b.strings, b.groups = b.strings[:0], b.groups[:0]
	b.granularity, b.latOffset, b.lonOffset, b.dateGranularity, b.kinds = 100, 0, 0, 1000, 0
	w := wire{b: data}
	for w.more() {
		switch num, t := w.field(); {
		case num == 1 && t == wireBytes:
			for s := (wire{b: w.bytes()}); s.more(); {
				if num, t := s.field(); num == 1 && t == wireBytes {
					b.strings = append(b.strings, s.bytes())
				} else {
					s.skip(t)
				}
				w.bad = w.bad || s.bad
			}
		case num == 2 && t == wireBytes:
			g := w.bytes()
			b.groups = append(b.groups, g)
			b.kinds |= kindsIn(g)
		case num == 17 && t == wireVarint:
			b.granularity = int64(w.varint())
		case num == 18 && t == wireVarint:
			b.dateGranularity = int64(w.varint())
		case num == 19 && t == wireVarint:
			b.latOffset = int64(w.varint())
		case num == 20 && t == wireVarint:
			b.lonOffset = int64(w.varint())
		default:
			w.skip(t)
		}
	}
	b.mark(l)
	return !w.bad
}

// mark notes which strings are wanted as keys and values.
func (b *block) mark(l lookup) {
	b.keys = append(b.keys[:0], make([]uint64, len(b.strings))...)
	b.values = append(b.values[:0], make([]uint64, len(b.strings))...)
	var k, v uint64
	for i, s := range b.strings {
		b.keys[i] = l.keys[string(s)]
		b.values[i] = l.values[string(s)] | l.every
		k |= b.keys[i]
		v |= b.values[i]
	}
	b.any = k & v
}

// kindsIn tells what a group holds. A group has one kind of object, so its first field tells.
func kindsIn(group []byte) int {
	w := wire{b: group}
	switch num, _ := w.field(); num {
	case 1, 2:
		return hasNodes
	case 3:
		return hasWays
	case 4:
		return hasRelations
	}
	return 0
}

// wants reports whether a tag, given by the numbers of its strings, is wanted.
func (b *block) wants(k, v uint64) bool {
	return k < uint64(len(b.keys)) && v < uint64(len(b.values)) && b.keys[k]&b.values[v] != 0
}

func (b *block) text(i uint64) (string, bool) {
	if i >= uint64(len(b.strings)) {
		return "", false
	}
	return string(b.strings[i]), true
}

// anyWanted reports whether one of the tags is wanted.
func (b *block) anyWanted(keys, vals []byte) bool {
	if b.any == 0 {
		return false
	}
	k, v := wire{b: keys}, wire{b: vals}
	for k.more() && v.more() {
		if b.wants(k.varint(), v.varint()) {
			return true
		}
	}
	return false
}

// tags makes the tags of an object of two packed lists.
func (b *block) tags(keys, vals []byte) (Tags, bool) {
	k, v := wire{b: keys}, wire{b: vals}
	tags := Tags{}
	for k.more() && v.more() {
		key, ok1 := b.text(k.varint())
		val, ok2 := b.text(v.varint())
		if !ok1 || !ok2 {
			return nil, false
		}
		tags[key] = val
	}
	return tags, !k.bad && !v.bad && !k.more() && !v.more()
}

func (b *block) point(lat, lon int64) orb.Point {
	return orb.Point{
		float64(b.lonOffset+b.granularity*lon) / 1e9,
		float64(b.latOffset+b.granularity*lat) / 1e9,
	}
}

// valid reports whether a point lies on the earth.
func valid(p orb.Point) bool {
	return p[0] >= -180 && p[0] <= 180 && p[1] >= -90 && p[1] <= 90
}
