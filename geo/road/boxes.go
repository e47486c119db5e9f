package road

// Boxes find edges near a point. Edges are numbered by the order of contraction, so neighbours in number are neighbours on the
// ground: a box around each 16 of them, a box around each 16 of those, and so on up to one.
type boxes struct {
	levels [][]box // levels[0] is around edges, the last has one box
}

type box struct{ minLon, minLat, maxLon, maxLat int32 }

const perBox = 16

func (b *boxes) bytes() (n int) {
	for _, l := range b.levels {
		n += 16 * len(l)
	}
	return n
}

func (b box) around(s spot) box {
	return box{min(b.minLon, s.lon), min(b.minLat, s.lat), max(b.maxLon, s.lon), max(b.maxLat, s.lat)}
}

func newBoxes(n *Network) boxes {
	var list []box
	for e := range uint32(len(n.from)) {
		if e%perBox == 0 {
			s := n.at[n.from[e]]
			list = append(list, box{s.lon, s.lat, s.lon, s.lat})
		}
		b := &list[len(list)-1]
		*b = b.around(n.at[n.from[e]]).around(n.at[n.to[e]])
		n.inner(e, func(s spot) { *b = b.around(s) })
	}
	out := boxes{[][]box{list}}
	for len(list) > 1 {
		var upper []box
		for i, b := range list {
			if i%perBox == 0 {
				upper = append(upper, b)
			}
			u := &upper[len(upper)-1]
			*u = u.around(spot{b.minLon, b.minLat}).around(spot{b.maxLon, b.maxLat})
		}
		out.levels = append(out.levels, upper)
		list = upper
	}
	return out
}

// each calls fn with the edges whose boxes meet w, ascending.
func (b *boxes) each(w box, edges int, fn func(edge uint32)) {
	b.walk(len(b.levels)-1, 0, w, edges, fn)
}

func (b *boxes) walk(level, i int, w box, edges int, fn func(edge uint32)) {
	x := b.levels[level][i]
	if x.minLon > w.maxLon || x.maxLon < w.minLon || x.minLat > w.maxLat || x.maxLat < w.minLat {
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
