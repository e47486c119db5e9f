package file

import (
	"github.com/paulmach/orb"
	"google.golang.org/protobuf/encoding/protowire"
)

// This file reads the frame of one unpacked PBF block, and the tags of objects that somebody wants.
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
	crowded bool // it holds more than a block may

	granularity, latOffset, lonOffset int64 // nanodegrees
	dateGranularity                   int64 // milliseconds

	fields fields // buffer
	hits   []hit  // buffer
	list   []Node // buffer
}

// A hit is a node of a dense group that somebody asked for.
type hit struct {
	index  int // in the group
	id     int64
	tags   []byte
	wanted bool // by its tags
}

// open reads the frame of a block: strings, groups, scale. data must stay unchanged while the block is used.
func (b *block) open(data []byte, l lookup) (ok bool) {
	b.strings, b.groups = b.strings[:0], b.groups[:0]
	b.granularity, b.latOffset, b.lonOffset, b.dateGranularity, b.kinds, b.crowded = 100, 0, 0, 1000, 0, false
	w := wire{b: data}
	for w.more() {
		num, t := w.field()
		scale := b.scale(num)
		switch {
		case num == 1 && t == wireBytes:
			w.bad = !b.readStrings(w.bytes()) || w.bad
		case num == 2 && t == wireBytes:
			g := w.bytes()
			b.groups = append(b.groups, g)
			b.kinds |= kindsIn(g)
		case scale != nil && t == wireVarint:
			*scale = int64(w.varint())
		default:
			w.skip(t)
		}
	}
	b.mark(l)
	return !w.bad
}

// fits reports whether a list of so many may grow; if not, the block is crowded.
func (b *block) fits(n, most int) bool {
	b.crowded = b.crowded || n >= most
	return !b.crowded
}

// scale returns what a field sets; nil for other fields.
func (b *block) scale(num protowire.Number) *int64 {
	switch num {
	case 17:
		return &b.granularity
	case 18:
		return &b.dateGranularity
	case 19:
		return &b.latOffset
	case 20:
		return &b.lonOffset
	}
	return nil
}

func (b *block) readStrings(table []byte) bool {
	w := wire{b: table}
	for w.more() {
		if !b.fits(len(b.strings), mostStrings) {
			return false
		}
		if num, t := w.field(); num == 1 && t == wireBytes {
			b.strings = append(b.strings, w.bytes())
		} else {
			w.skip(t)
		}
	}
	return !w.bad
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

// wants reports whether a tag, given by the numbers of its strings, is wanted.
func (b *block) wants(k, v uint64) bool {
	return k < uint64(len(b.keys)) && v < uint64(len(b.values)) && b.keys[k]&b.values[v] != 0
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

func (b *block) text(i uint64) (string, bool) {
	if i >= uint64(len(b.strings)) {
		return "", false
	}
	return string(b.strings[i]), true
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

// alternating makes the tags of a dense node of a list of keys and values by turns.
func (b *block) alternating(list []byte) (Tags, bool) {
	tags := Tags{}
	for w := (wire{b: list}); w.more(); {
		key, ok1 := b.text(w.varint())
		val, ok2 := b.text(w.varint())
		if !ok1 || !ok2 {
			return nil, false
		}
		tags[key] = val
	}
	return tags, true
}

func (b *block) point(lat, lon int64) orb.Point {
	return orb.Point{
		float64(b.lonOffset+b.granularity*lon) / 1e9,
		float64(b.latOffset+b.granularity*lat) / 1e9,
	}
}
