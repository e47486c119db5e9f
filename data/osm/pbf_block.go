package osm

import (
	"math/bits"

	"github.com/paulmach/orb"
)

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

	hits []hit // buffer
}

// A hit is a wanted node of a dense group.
type hit struct {
	index  int   // in the group
	id     int64 //
	tags   []byte
	wanted bool // by its tags
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
	b.granularity, b.latOffset, b.lonOffset, b.kinds = 100, 0, 0, 0
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

// nodes returns the nodes that have a wanted tag or one of the numbers in also.
func (b *block) nodes(also ids) (list []Node, ok bool) {
	ok = true
	for _, g := range b.groups {
		w := wire{b: g}
		for w.more() && ok {
			switch num, t := w.field(); {
			case num == 1 && t == wireBytes:
				ok = b.plainNode(w.bytes(), also, &list)
			case num == 2 && t == wireBytes:
				ok = b.denseNodes(w.bytes(), also, &list)
			default:
				w.skip(t)
			}
		}
		ok = ok && !w.bad
	}
	return list, ok
}

func (b *block) plainNode(data []byte, also ids, list *[]Node) bool {
	var id, lat, lon int64
	var keys, vals []byte
	w := wire{b: data}
	for w.more() {
		switch num, t := w.field(); {
		case num == 1 && t == wireVarint:
			id = w.zigzag()
		case num == 2 && t == wireBytes:
			keys = w.bytes()
		case num == 3 && t == wireBytes:
			vals = w.bytes()
		case num == 8 && t == wireVarint:
			lat = w.zigzag()
		case num == 9 && t == wireVarint:
			lon = w.zigzag()
		default:
			w.skip(t)
		}
	}
	if w.bad {
		return false
	}
	n := Node{ID: id, Point: b.point(lat, lon)}
	if b.anyWanted(keys, vals) {
		ok := false
		if n.Tags, ok = b.tags(keys, vals); !ok {
			return false
		}
	} else if also.index(id) < 0 {
		return true
	}
	*list = append(*list, n)
	return valid(n.Point)
}

// denseNodes reads columns: first numbers and tags to learn which nodes are wanted, then positions up to the last of them.
func (b *block) denseNodes(data []byte, also ids, list *[]Node) bool {
	var idCol, latCol, lonCol, tagCol []byte
	w := wire{b: data}
	for w.more() {
		switch num, t := w.field(); {
		case num == 1 && t == wireBytes:
			idCol = w.bytes()
		case num == 8 && t == wireBytes:
			latCol = w.bytes()
		case num == 9 && t == wireBytes:
			lonCol = w.bytes()
		case num == 10 && t == wireBytes:
			tagCol = w.bytes()
		default:
			w.skip(t)
		}
	}
	if w.bad || b.any == 0 && len(also) == 0 {
		return !w.bad
	}
	if !b.denseHits(idCol, tagCol, also) {
		return false
	}
	latW, lonW := wire{b: latCol}, wire{b: lonCol}
	var lat, lon int64
	next := 0
	for _, h := range b.hits {
		for ; next <= h.index; next++ {
			lat += latW.zigzag()
			lon += lonW.zigzag()
		}
		n := Node{ID: h.id, Point: b.point(lat, lon)}
		if h.wanted {
			n.Tags = Tags{}
			for t := (wire{b: h.tags}); t.more(); {
				key, ok1 := b.text(t.varint())
				val, ok2 := b.text(t.varint())
				if !ok1 || !ok2 {
					return false
				}
				n.Tags[key] = val
			}
		}
		if latW.bad || lonW.bad || !valid(n.Point) {
			return false
		}
		*list = append(*list, n)
	}
	return true
}

// denseHits fills b.hits. Both columns are walked together; nodes are usually ascending, so also is walked along too.
func (b *block) denseHits(idCol, tagCol []byte, also ids) bool {
	b.hits = b.hits[:0]
	idW, tagW := wire{b: idCol}, wire{b: tagCol}
	tagged := len(tagCol) > 0 && b.any != 0
	var id int64
	next := 0 // in also
	for i := 0; idW.more(); i++ {
		step := idW.zigzag()
		id += step
		h := hit{index: i, id: id}
		if tagged {
			start := tagW.b
			for {
				k := tagW.varint()
				if k == 0 {
					break
				}
				if b.wants(k, tagW.varint()) {
					h.wanted = true
				}
			}
			if h.wanted {
				h.tags = start[:len(start)-len(tagW.b)-1] // without the closing 0
			}
		}
		if i == 0 || step <= 0 {
			next = lowerBound(also, id)
		}
		for next < len(also) && also[next] < id {
			next++
		}
		if h.wanted || next < len(also) && also[next] == id {
			b.hits = append(b.hits, h)
		}
	}
	return !idW.bad && !tagW.bad
}

// ways returns the ways that have a wanted tag or one of the numbers in also.
func (b *block) ways(also ids) (list []Way, ok bool) {
	for _, g := range b.groups {
		w := wire{b: g}
		for w.more() {
			num, t := w.field()
			if num != 3 || t != wireBytes {
				w.skip(t)
				continue
			}
			if !b.way(w.bytes(), also, &list) {
				return nil, false
			}
		}
		if w.bad {
			return nil, false
		}
	}
	return list, true
}

func (b *block) way(data []byte, also ids, list *[]Way) bool {
	way, keys, vals, refs := Way{}, []byte(nil), []byte(nil), []byte(nil)
	w := wire{b: data}
	for w.more() {
		switch num, t := w.field(); {
		case num == 1 && t == wireVarint:
			way.ID = int64(w.varint())
		case num == 2 && t == wireBytes:
			keys = w.bytes()
		case num == 3 && t == wireBytes:
			vals = w.bytes()
		case num == 8 && t == wireBytes:
			refs = w.bytes()
		default:
			w.skip(t)
		}
	}
	if w.bad || !b.anyWanted(keys, vals) && also.index(way.ID) < 0 {
		return !w.bad
	}
	var ok bool
	if way.Tags, ok = b.tags(keys, vals); !ok {
		return false
	}
	way.Refs = make([]int64, 0, countVarints(refs))
	var id int64
	r := wire{b: refs}
	for r.more() {
		id += r.zigzag()
		way.Refs = append(way.Refs, id)
	}
	*list = append(*list, way)
	return !r.bad
}

// relations returns the relations that have a wanted tag.
func (b *block) relations() (list []Relation, ok bool) {
	if b.any == 0 {
		return nil, true
	}
	for _, g := range b.groups {
		w := wire{b: g}
		for w.more() {
			num, t := w.field()
			if num != 4 || t != wireBytes {
				w.skip(t)
				continue
			}
			if !b.relation(w.bytes(), &list) {
				return nil, false
			}
		}
		if w.bad {
			return nil, false
		}
	}
	return list, true
}

func (b *block) relation(data []byte, list *[]Relation) bool {
	var rel Relation
	var keys, vals, roles, members, types []byte
	w := wire{b: data}
	for w.more() {
		switch num, t := w.field(); {
		case num == 1 && t == wireVarint:
			rel.ID = int64(w.varint())
		case num == 2 && t == wireBytes:
			keys = w.bytes()
		case num == 3 && t == wireBytes:
			vals = w.bytes()
		case num == 8 && t == wireBytes:
			roles = w.bytes()
		case num == 9 && t == wireBytes:
			members = w.bytes()
		case num == 10 && t == wireBytes:
			types = w.bytes()
		default:
			w.skip(t)
		}
	}
	if w.bad || !b.anyWanted(keys, vals) {
		return !w.bad
	}
	var ok bool
	if rel.Tags, ok = b.tags(keys, vals); !ok {
		return false
	}
	roleW, idW, typeW := wire{b: roles}, wire{b: members}, wire{b: types}
	var id int64
	for idW.more() && roleW.more() && typeW.more() {
		id += idW.zigzag()
		role, ok := b.text(roleW.varint())
		typ := typeW.varint()
		if !ok || typ > 2 {
			return false
		}
		rel.Members = append(rel.Members, Member{Type: "nwr"[typ], ID: id, Role: role})
	}
	*list = append(*list, rel)
	return !roleW.bad && !idW.bad && !typeW.bad && !idW.more()
}

// valid reports whether a point lies on the earth.
func valid(p orb.Point) bool {
	return p[0] >= -180 && p[0] <= 180 && p[1] >= -90 && p[1] <= 90
}

// countVarints counts the numbers in a packed list: every last byte has its top bit clear.
func countVarints(b []byte) (n int) {
	for _, c := range b {
		n += bits.OnesCount8(^c & 0x80)
	}
	return n
}

func lowerBound(s ids, id int64) int {
	lo, hi := 0, len(s)
	for lo < hi {
		if m := (lo + hi) / 2; s[m] < id {
			lo = m + 1
		} else {
			hi = m
		}
	}
	return lo
}
