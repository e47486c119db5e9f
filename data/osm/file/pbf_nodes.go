package file

import "slices"

// This file decodes the nodes of a PBF block.

// nodes returns the nodes that have a wanted tag or one of the numbers in also. The list is valid until the next block is
// opened.
func (b *block) nodes(also IDs) (list []Node, ok bool) {
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

func (b *block) plainNode(data []byte, also IDs, list *[]Node) bool {
	f := &b.fields
	if !f.read(data) {
		return false
	}
	keys, vals := f.bytes[2], f.bytes[3]
	n := Node{ID: f.signed(1), Point: b.point(f.signed(8), f.signed(9))}
	if b.anyWanted(keys, vals) {
		ok := false
		if n.Tags, ok = b.tags(keys, vals); !ok {
			return false
		}
	} else if also.Index(n.ID) < 0 {
		return true
	}
	if !b.fits(len(*list), mostTagged) {
		return false
	}
	*list = append(*list, n)
	return onEarth(n.Point)
}

// denseNodes reads columns: first numbers and tags to learn which nodes are wanted, then positions up to the last of them.
func (b *block) denseNodes(data []byte, also IDs, list *[]Node) bool {
	f := &b.fields
	if ok := f.read(data); !ok || b.any == 0 && len(also) == 0 {
		return ok
	}
	if !b.denseHits(f.bytes[1], f.bytes[10], also) {
		return false
	}
	latW, lonW := wire{b: f.bytes[8]}, wire{b: f.bytes[9]}
	var lat, lon int64
	next := 0
	for _, h := range b.hits {
		for ; next <= h.index; next++ {
			lat += latW.zigzag()
			lon += lonW.zigzag()
		}
		n := Node{ID: h.id, Point: b.point(lat, lon)}
		if h.wanted {
			ok := false
			if n.Tags, ok = b.alternating(h.tags); !ok {
				return false
			}
		}
		if latW.bad || lonW.bad || !onEarth(n.Point) {
			return false
		}
		*list = append(*list, n)
	}
	return true
}

// denseHits fills b.hits. Both columns are walked together; nodes are usually ascending, so also is walked along too.
func (b *block) denseHits(idCol, tagCol []byte, also IDs) bool {
	b.hits = b.hits[:0]
	idW, tagW := wire{b: idCol}, wire{b: tagCol}
	tagged := len(tagCol) > 0 && b.any != 0
	var id int64
	next, wanted := 0, 0 // in also, by tags
	for i := 0; idW.more(); i++ {
		step := idW.zigzag()
		id += step
		h := hit{index: i, id: id}
		if tagged {
			h.tags, h.wanted = b.denseTags(&tagW)
		}
		if i == 0 || step <= 0 {
			next, _ = slices.BinarySearch(also, id)
		}
		for next < len(also) && also[next] < id {
			next++
		}
		if h.wanted {
			wanted++
		}
		if h.wanted || next < len(also) && also[next] == id {
			if !b.fits(len(b.hits), mostObjects) || !b.fits(wanted, mostTagged) {
				return false
			}
			b.hits = append(b.hits, h)
		}
	}
	return !idW.bad && !tagW.bad
}

// denseTags walks over the tags of one node, which a 0 closes. They are nil if none is wanted.
func (b *block) denseTags(w *wire) (list []byte, wanted bool) {
	start := w.b
	for {
		k := w.varint()
		if k == 0 {
			break
		}
		if b.wants(k, w.varint()) {
			wanted = true
		}
	}
	if wanted {
		list = start[:len(start)-len(w.b)-1] // without the closing 0
	}
	return list, wanted
}
