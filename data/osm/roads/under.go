package roads

import (
	"ullage/data/osm/file"
	"ullage/geo/road/net"
)

// This file finds where small roads pass below a bridge and no height is stated: there a high vehicle may not fit. The data say
// nothing of the headroom, so it is told as unknown. Main roads are left out: their bridges stand at the usual height, 4 m or
// more (96/53/EC), or are signed; small roads below railways are where low bridges are. Common practice, no source.

// railways whose bridges count, besides those of roads. Source: Key:railway.
var railways = []string{"rail", "light_rail", "narrow_gauge", "tram", "subway", "disused", "preserved"}

// isBridge says that a way of a road or a railway is a bridge.
func isBridge(t file.Tags) bool { return t["bridge"] != "" && t["bridge"] != "no" }

// A bridgeSide is a piece of a bridge between two nodes.
type bridgeSide struct{ a, b int32 }

// overhead finds the bridges near a piece of road: a grid of about 200 m.
type overhead struct {
	in    *net.Input
	sides []bridgeSide
	cells map[[2]int32][]int32 // cell → its sides
}

const cellsPerDeg = 500

func newOverhead(in *net.Input, bridges [][]int64, c *corners) *overhead {
	o := &overhead{in: in, cells: map[[2]int32][]int32{}}
	for _, refs := range bridges {
		last := -1
		for _, id := range refs {
			k := c.at(id)
			if last >= 0 && k >= 0 {
				s := bridgeSide{int32(last), int32(k)}
				o.eachCell(s, func(cell [2]int32) bool {
					o.cells[cell] = append(o.cells[cell], int32(len(o.sides)))
					return true
				})
				o.sides = append(o.sides, s)
			}
			last = k
		}
	}
	return o
}

// eachCell calls fn with the cells that a side may touch, until fn returns false. A side over more than a thousand, of a file
// that is wrong, has none.
func (o *overhead) eachCell(s bridgeSide, fn func(c [2]int32) bool) {
	p, q := o.in.Nodes[s.a].Point, o.in.Nodes[s.b].Point
	cell := func(v float64) int32 { return int32((v + 200) * cellsPerDeg) }
	x0, x1 := cell(min(p[0], q[0])), cell(max(p[0], q[0]))
	y0, y1 := cell(min(p[1], q[1])), cell(max(p[1], q[1]))
	if int64(x1-x0+1)*int64(y1-y0+1) > 1000 {
		return
	}
	for x := x0; x <= x1; x++ {
		for y := y0; y <= y1; y++ {
			if !fn([2]int32{x, y}) {
				return
			}
		}
	}
}

// above says that a bridge crosses the piece of road without touching it.
func (o *overhead) above(s bridgeSide) (found bool) {
	o.eachCell(s, func(c [2]int32) bool {
		for _, i := range o.cells[c] {
			b := o.sides[i]
			if b.a != s.a && b.a != s.b && b.b != s.a && b.b != s.b && o.cross(s, b) {
				found = true
			}
		}
		return !found
	})
	return found
}

func (o *overhead) cross(s, t bridgeSide) bool {
	at := func(k int32) (x, y float64) { p := o.in.Nodes[k].Point; return p[0], p[1] }
	side := func(a, b, c int32) float64 {
		ax, ay := at(a)
		bx, by := at(b)
		cx, cy := at(c)
		return (bx-ax)*(cy-ay) - (by-ay)*(cx-ax)
	}
	return side(s.a, s.b, t.a)*side(s.a, s.b, t.b) < 0 && side(t.a, t.b, s.a)*side(t.a, t.b, s.b) < 0
}

// markUnder cuts ways so that what passes below a bridge is a piece of its own, with the flag [net.Under].
func markUnder(in *net.Input, bridges [][]int64, c *corners) {
	o := newOverhead(in, bridges, c)
	if len(o.sides) == 0 {
		return
	}
	var ways []net.Way
	for _, w := range in.Ways {
		small := w.Road.Class >= net.Tertiary && w.Road.Class <= net.Track
		if !small || w.Road.Flags&(net.Bridge|net.Tunnel|net.Covered) != 0 || w.Road.Limits.HeightCm != 0 {
			ways = append(ways, w)
			continue
		}
		ways = append(ways, o.cut(w)...)
	}
	in.Ways = ways
}

// cut parts a way where bridges cross it.
func (o *overhead) cut(w net.Way) (ways []net.Way) {
	piece := func(from, to int, r net.Road) {
		if to > from {
			ways = append(ways, net.Way{ID: w.ID, Nodes: w.Nodes[from : to+1], Road: r})
		}
	}
	below := w.Road
	below.Flags |= net.Under
	start := 0
	for i := 1; i < len(w.Nodes); i++ {
		if o.above(bridgeSide{w.Nodes[i-1], w.Nodes[i]}) {
			piece(start, i-1, w.Road)
			piece(i-1, i, below)
			start = i
		}
	}
	piece(start, len(w.Nodes)-1, w.Road)
	return ways
}
