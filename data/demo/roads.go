package demo

import (
	"cmp"
	"maps"
	"math"
	"slices"
)

// This file turns chains of corners into ways with tags: bridges over rivers,
// limits of speed in towns, the tunnel, the low bridge.

// A span is a part of a road with tags of its own.
type span struct {
	from, to float64 // km along the road
	tags     tags
}

// A road is one chain drawn: its line and the nodes at both ends.
type road struct {
	class      class
	line       []pt
	start, end int // corners
	spans      []span
}

// draw gives each chain its line.
func (n *network) draw(ends map[int]bool) []road {
	var out []road
	for _, c := range n.chains(ends) {
		line := make([]pt, len(c.corners))
		for i, k := range c.corners {
			line[i] = n.at[k]
		}
		switch c.class {
		case motorway:
			line = curve(soften(line, 4), 0.3)
		case trunk:
			line = wind(curve(soften(line, 2), 0.15), 0.02, 0.12)
		case primary:
			line = wind(curve(soften(line, 2), 0.12), 0.05, 0.24)
		default:
			line = wind(curve(soften(line, 1), 0.1), 0.08, 0.3)
		}
		out = append(out, road{class: c.class, line: thin(line, 0.006), start: c.corners[0], end: c.corners[len(c.corners)-1]})
	}
	return out
}

// addBridges puts a bridge wherever a road crosses water.
func (r *road) addBridges(rivers []river) {
	run := 0.0
	total := length(r.line)
	for i := 1; i < len(r.line); i++ {
		a, b := r.line[i-1], r.line[i]
		for _, v := range rivers {
			if !v.near(a, b) {
				continue
			}
			for k := 1; k < len(v.line); k++ {
				if f, _, ok := cross(a, b, v.line[k-1], v.line[k]); ok {
					at := run + f*a.dist(b)
					r.spans = append(r.spans, span{max(0, at-0.04), min(total, at+0.04), tags{"bridge": "yes", "layer": "1"}})
				}
			}
		}
		run += a.dist(b)
	}
}

// slowThrough lowers the speed where the road is within reach of a settlement.
func (r *road) slowThrough(places []town) {
	if r.class == motorway {
		return
	}
	total, from := length(r.line), -1.0
	const step = 0.2
	middle := along(r.line, total/2)
	places = slices.DeleteFunc(slices.Clone(places), func(t town) bool { return t.rank == 0 || middle.dist(t.at) > total/2+townKm(t.rank) })
	for km := 0.0; ; km += step {
		p := along(r.line, min(km, total))
		near := slices.ContainsFunc(places, func(t town) bool { return p.dist(t.at) < townKm(t.rank) })
		switch {
		case near && from < 0:
			from = max(0, km)
		case (!near || km >= total) && from >= 0:
			r.spans = append(r.spans, span{from, min(km, total), tags{"maxspeed": "50", "lit": "yes"}})
			from = -1
		}
		if km >= total {
			return
		}
	}
}

func townKm(rank int) float64 { return [...]float64{0, 2.6, 1.2, 0.5}[rank] }

// baseTags are what every way of a class carries.
func baseTags(c class, ref string) tags {
	t := tags{"highway": classNames[c]}
	if ref != "" {
		t["ref"] = ref
	}
	switch c {
	case motorway:
		t = t.with(tags{"maxspeed": "110", "lanes": "2", "oneway": "yes", "surface": "asphalt"})
	case trunk:
		t = t.with(tags{"maxspeed": "90", "surface": "asphalt"})
	case primary:
		t = t.with(tags{"maxspeed": "80", "surface": "asphalt"})
	case secondary:
		t["maxspeed"] = "70"
	}
	return t
}

// emit writes a road as ways cut at its spans; from and to are end nodes.
func (w *world) emit(r road, from, to int64, base tags) {
	total := length(r.line)
	cuts := []float64{0, total}
	for _, s := range r.spans {
		cuts = append(cuts, s.from, s.to)
	}
	slices.Sort(cuts)
	cuts = slices.CompactFunc(cuts, func(a, b float64) bool { return math.Abs(a-b) < 0.015 })
	if len(cuts) < 2 {
		cuts = []float64{0, total}
	}
	cuts[len(cuts)-1] = total
	last := from
	for i := 1; i < len(cuts); i++ {
		a, b := cuts[i-1], cuts[i]
		t := maps.Clone(base)
		for _, s := range r.spans {
			if m := (a + b) / 2; s.from <= m && m <= s.to {
				maps.Copy(t, s.tags)
			}
		}
		part := between(r.line, a, b)
		refs := append([]int64{last}, w.addNodes(part[1:len(part)-1])...)
		if last = to; i < len(cuts)-1 {
			last = w.addNode(part[len(part)-1], nil)
		}
		w.addWay(append(refs, last), t)
	}
}

// carriageways are the two one-way halves of a motorway, driven on the right,
// 12 m either side of the middle, together again at the ends.
func carriageways(r road) (there, back road) {
	shift := func(side float64) []pt {
		out := make([]pt, len(r.line))
		total, run := length(r.line), 0.0
		for i, p := range r.line {
			if i > 0 {
				run += p.dist(r.line[i-1])
			}
			dir := r.line[min(i+1, len(r.line)-1)].sub(r.line[max(i-1, 0)]).unit()
			out[i] = p.add(dir.left().mul(side * 0.012 * min(1, run/0.3, (total-run)/0.3)))
		}
		return out
	}
	there, back = r, r
	there.line = shift(-1)
	back.line = shift(1)
	slices.Reverse(back.line)
	back.start, back.end = r.end, r.start
	total := length(r.line)
	back.spans = nil
	for _, s := range r.spans {
		back.spans = append(back.spans, span{total - s.to, total - s.from, s.tags})
	}
	slices.SortFunc(back.spans, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	return there, back
}
