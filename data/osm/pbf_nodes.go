package osm

// This file decodes the nodes of a PBF block.

// A hit is a wanted node of a dense group.
type hit struct {
	index  int   // in the group
	id     int64 //
	tags   []byte
	wanted bool // by its tags
}

// nodes returns the nodes that have a wanted tag or one of the numbers in also. The list is valid until the next block is
// opened.
func (b *block) nodes(also ids) (list []Node, ok bool) {
	list, ok = b.list[:0], true
	defer func() { b.list = list[:0] }()
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
