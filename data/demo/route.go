package demo

import (
	"cmp"
	"container/heap"
	"slices"

	"github.com/paulmach/orb"
)

// A link is one side of a road that may be driven this way.
type link struct {
	to   int64
	cost float64 // minutes
}

// kmh is what a class of road is taken to allow on average.
var kmh = map[string]float64{"motorway": 95, "trunk": 75, "primary": 62, "secondary": 52, "tertiary": 42, "residential": 25}

// links are the sides of all roads by the node that they leave.
func (w *world) links() [][]link {
	out := make([][]link, len(w.nodes)+1)
	for _, y := range w.ways {
		v, ok := kmh[y.tags["highway"]]
		if !ok {
			continue
		}
		for i := 1; i < len(y.refs); i++ {
			a, b := y.refs[i-1], y.refs[i]
			c := kmBetween(w.point(a), w.point(b)) / v * 60
			if y.tags["maxheight"] == "2.7" || y.tags["maxwidth"] != "" || y.tags["maxweight"] != "" {
				c *= 20 // no way for a motorhome
			}
			out[a] = append(out[a], link{b, c})
			if y.tags["oneway"] != "yes" {
				out[b] = append(out[b], link{a, c})
			}
		}
	}
	return out
}

func kmBetween(a, b orb.Point) float64 {
	p := pt{(a[0] - b[0]) * kmPerLon, (a[1] - b[1]) * kmPerLat}
	return p.dist(pt{})
}

// drive is the quickest way over the roads through the towns named, as nodes
// (Dijkstra 1959); nil if there is none.
func (s *island) drive(names ...string) []int64 {
	links := s.world.links()
	var out []int64
	for i := 1; i < len(names); i++ {
		leg := quickest(links, s.nodeOf[s.corner[names[i-1]]], s.nodeOf[s.corner[names[i]]])
		if leg == nil {
			return nil
		}
		if i > 1 {
			leg = leg[1:]
		}
		out = append(out, leg...)
	}
	return out
}

func quickest(links [][]link, from, to int64) []int64 {
	cost, prev := make([]float64, len(links)), make([]int64, len(links))
	closed := make([]bool, len(links))
	prev[from] = from
	q := &queue{{int(from), 0}}
	for q.Len() > 0 {
		at := int64(heap.Pop(q).(item).at)
		if closed[at] {
			continue
		}
		closed[at] = true
		if at == to {
			break
		}
		for _, l := range links[at] {
			if c := cost[at] + l.cost; prev[l.to] == 0 || !closed[l.to] && c < cost[l.to] {
				cost[l.to], prev[l.to] = c, at
				heap.Push(q, item{int(l.to), c})
			}
		}
	}
	if !closed[to] {
		return nil
	}
	out := []int64{to}
	for at := to; at != from; at = prev[at] {
		out = append(out, prev[at])
	}
	slices.Reverse(out)
	return out
}

// lineOf is the geometry of a drive, thinned to 15 m.
func (s *island) lineOf(nodes []int64) orb.LineString {
	var line []pt
	for _, id := range nodes {
		line = append(line, s.at(id))
	}
	var out orb.LineString
	for _, part := range cutAtTurns(line) {
		for _, p := range thin(part, 0.015) {
			if ll := p.lonLat(); len(out) == 0 || out[len(out)-1] != ll {
				out = append(out, ll)
			}
		}
	}
	return out
}

// cutAtTurns cuts a line where it turns back on itself: a thinned line must
// not lose the far end of a road that is driven out and back.
func cutAtTurns(line []pt) [][]pt {
	var out [][]pt
	start := 0
	for i := 1; i < len(line)-1; i++ {
		if cmp.Compare(line[i-1].dist(line[i+1]), 1e-6) < 0 {
			out, start = append(out, line[start:i+1]), i
		}
	}
	return append(out, line[start:])
}
