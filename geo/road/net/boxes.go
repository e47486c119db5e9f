package net

import "math"

// Boxes find edges near a point. Edges are numbered by the order of contraction, so neighbours in number are neighbours on the
// ground: a box around each 16 of them, a box around each 16 of those, and so on up to one.
type boxes struct {
	levels [][]Box // levels[0] is around edges, the last has one box
}

// A Box holds the positions within its bounds, which belong to it.
type Box struct{ MinLon, MinLat, MaxLon, MaxLat int32 }

const perBox = 16

func (b *boxes) bytes() (n int) {
	for _, l := range b.levels {
		n += 16 * len(l)
	}
	return n
}

// Around returns the smallest box that holds a box and a position.
func (b Box) Around(s Pos) Box {
	return Box{min(b.MinLon, s.Lon), min(b.MinLat, s.Lat), max(b.MaxLon, s.Lon), max(b.MaxLat, s.Lat)}
}

// Nowhere has no point in it.
var Nowhere = Box{math.MaxInt32, math.MaxInt32, math.MinInt32, math.MinInt32}

// newBoxes boxes edges, of which each calls a function with all points.
func newBoxes(edges int, each func(edge uint32, fn func(Pos))) boxes {
	var list []Box
	for e := range uint32(edges) {
		if e%perBox == 0 {
			list = append(list, Nowhere)
		}
		b := &list[len(list)-1]
		each(e, func(s Pos) { *b = b.Around(s) })
	}
	out := boxes{[][]Box{list}}
	for len(list) > 1 {
		var upper []Box
		for i, b := range list {
			if i%perBox == 0 {
				upper = append(upper, Nowhere)
			}
			u := &upper[len(upper)-1]
			*u = u.Around(Pos{b.MinLon, b.MinLat}).Around(Pos{b.MaxLon, b.MaxLat})
		}
		out.levels = append(out.levels, upper)
		list = upper
	}
	return out
}

// each calls fn with the edges whose boxes meet w, ascending.
func (b *boxes) each(w Box, edges int, fn func(edge uint32)) {
	b.walk(len(b.levels)-1, 0, w, edges, fn)
}

func (b *boxes) walk(level, i int, w Box, edges int, fn func(edge uint32)) {
	x := b.levels[level][i]
	if x.MinLon > w.MaxLon || x.MaxLon < w.MinLon || x.MinLat > w.MaxLat || x.MaxLat < w.MinLat {
		return
	}
	end := edges
	if level > 0 {
		end = len(b.levels[level-1])
	}
	for k := i * perBox; k < min((i+1)*perBox, end); k++ {
		if level > 0 {
			b.walk(level-1, k, w, edges, fn)
		} else {
			fn(uint32(k))
		}
	}
}
