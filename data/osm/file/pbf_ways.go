package file

import (
	"math/bits"

	"github.com/paulmach/orb"
	"google.golang.org/protobuf/encoding/protowire"
)

// This file decodes the ways and relations of a PBF block.

// ways returns the ways that have a wanted tag or one of the numbers in also.
func (b *block) ways(also IDs) (list []Way, ok bool) {
	ok = b.each(3, func(data []byte) bool { return b.way(data, also, &list) })
	return list, ok
}

// each calls fn with every object in the field of the groups; false if the block is damaged or fn says so.
func (b *block) each(field protowire.Number, fn func(data []byte) bool) bool {
	for _, g := range b.groups {
		w := wire{b: g}
		for w.more() {
			num, t := w.field()
			if num != field || t != wireBytes {
				w.skip(t)
				continue
			}
			if !fn(w.bytes()) {
				return false
			}
		}
		if w.bad {
			return false
		}
	}
	return true
}

func (b *block) way(data []byte, also IDs, list *[]Way) (ok bool) {
	f := &b.fields
	if !f.read(data) {
		return false
	}
	way := Way{ID: int64(f.number[1])}
	keys, vals := f.bytes[2], f.bytes[3]
	if !b.anyWanted(keys, vals) && also.Index(way.ID) < 0 {
		return true
	}
	if way.Tags, ok = b.tags(keys, vals); !ok {
		return false
	}
	refs := wire{b: f.bytes[8]}
	corners := countVarints(refs.b)
	if !b.fits(corners, mostObjects) || !b.fits(len(*list), mostTagged) {
		return false
	}
	way.Refs = make([]int64, 0, corners)
	var id int64
	for refs.more() {
		id += refs.zigzag()
		way.Refs = append(way.Refs, id)
	}
	if way.Points, ok = b.points(f.bytes[9], f.bytes[10]); !ok {
		return false
	}
	*list = append(*list, way)
	return !refs.bad
}

// countVarints counts the numbers in a packed list: every last byte has its top bit clear.
func countVarints(b []byte) (n int) {
	for _, c := range b {
		n += bits.OnesCount8(^c & 0x80)
	}
	return n
}

// points reads the positions of a way's nodes, which files of the feature LocationsOnWays have.
func (b *block) points(lats, lons []byte) (ls orb.LineString, ok bool) {
	latW, lonW := wire{b: lats}, wire{b: lons}
	var lat, lon int64
	if !b.fits(countVarints(lats), mostObjects) {
		return nil, false
	}
	for latW.more() && lonW.more() {
		lat += latW.zigzag()
		lon += lonW.zigzag()
		p := b.point(lat, lon)
		if !onEarth(p) {
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
	ok = b.each(4, func(data []byte) bool { return b.relation(data, &list) })
	return list, ok
}

func (b *block) relation(data []byte, list *[]Relation) (ok bool) {
	f := &b.fields
	if !f.read(data) {
		return false
	}
	keys, vals := f.bytes[2], f.bytes[3]
	if !b.anyWanted(keys, vals) {
		return true
	}
	rel := Relation{ID: int64(f.number[1])}
	if rel.Tags, ok = b.tags(keys, vals); !ok {
		return false
	}
	roles, ids, types := wire{b: f.bytes[8]}, wire{b: f.bytes[9]}, wire{b: f.bytes[10]}
	var id int64
	if !b.fits(countVarints(ids.b), mostObjects) || !b.fits(len(*list), mostTagged) {
		return false
	}
	for ids.more() && roles.more() && types.more() {
		id += ids.zigzag()
		role, ok := b.text(roles.varint())
		typ := types.varint()
		if !ok || typ > 2 {
			return false
		}
		rel.Members = append(rel.Members, Member{Type: "nwr"[typ], ID: id, Role: role})
	}
	*list = append(*list, rel)
	return !roles.bad && !ids.bad && !types.bad && !ids.more()
}
