package osm

import (
	"math/bits"

	"github.com/paulmach/orb"
)

// This file decodes the ways and relations of a PBF block.

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
	var way Way
	var keys, vals, refs, lats, lons []byte
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
		case num == 9 && t == wireBytes:
			lats = w.bytes()
		case num == 10 && t == wireBytes:
			lons = w.bytes()
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
	if way.Points, ok = b.points(lats, lons); !ok {
		return false
	}
	*list = append(*list, way)
	return !r.bad
}

// points reads the positions of a way's nodes, which files of the feature LocationsOnWays have.
func (b *block) points(lats, lons []byte) (ls orb.LineString, ok bool) {
	latW, lonW := wire{b: lats}, wire{b: lons}
	var lat, lon int64
	for latW.more() && lonW.more() {
		lat += latW.zigzag()
		lon += lonW.zigzag()
		p := b.point(lat, lon)
		if !valid(p) {
			return nil, false
		}
		ls = append(ls, p)
	}
	return ls, !latW.bad && !lonW.bad
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

// countVarints counts the numbers in a packed list: every last byte has its top bit clear.
func countVarints(b []byte) (n int) {
	for _, c := range b {
		n += bits.OnesCount8(^c & 0x80)
	}
	return n
}
