package demo

import (
	"maps"
	"math"
	"slices"
	"strings"

	"github.com/paulmach/orb"
)

// The island's middle: open ocean, more than 500 km from any land.
const (
	middleLat = 40.0
	middleLon = -38.0
	kmPerLat  = 111.03 // one degree of latitude at 40° N on WGS84
	kmPerLon  = 85.39  // one degree of longitude at 40° N on WGS84
)

// A pt is a position in km east and north of the island's middle.
type pt struct{ x, y float64 }

func (a pt) add(b pt) pt             { return pt{a.x + b.x, a.y + b.y} }
func (a pt) sub(b pt) pt             { return pt{a.x - b.x, a.y - b.y} }
func (a pt) mul(f float64) pt        { return pt{a.x * f, a.y * f} }
func (a pt) dist(b pt) float64       { return math.Sqrt((a.x-b.x)*(a.x-b.x) + (a.y-b.y)*(a.y-b.y)) }
func (a pt) lerp(b pt, f float64) pt { return pt{a.x + (b.x-a.x)*f, a.y + (b.y-a.y)*f} }
func (a pt) left() pt                { return pt{-a.y, a.x} }
func (a pt) unit() pt {
	if l := math.Sqrt(a.x*a.x + a.y*a.y); l > 0 {
		return a.mul(1 / l)
	}
	return pt{1, 0}
}

func (a pt) lonLat() orb.Point {
	return orb.Point{middleLon + a.x/kmPerLon, middleLat + a.y/kmPerLat}
}

// tags are the keys and values of an object.
type tags map[string]string

// parseTags reads "k=v; k=v".
func parseTags(text string) tags {
	t := tags{}
	for part := range strings.SplitSeq(text, ";") {
		// A value may hold a semicolon of its own: written as "|".
		if k, v, ok := strings.Cut(strings.TrimSpace(part), "="); ok {
			t[k] = strings.ReplaceAll(v, "|", ";")
		}
	}
	return t
}

func (t tags) keys() []string { return slices.Sorted(maps.Keys(t)) }

// with returns a copy with more tags.
func (t tags) with(more tags) tags {
	out := maps.Clone(t)
	if out == nil {
		out = tags{}
	}
	maps.Copy(out, more)
	return out
}

type node struct {
	id       int64
	lat, lon int64 // 1e-7 degrees
	tags     tags
}

type way struct {
	id   int64
	refs []int64
	tags tags
}

type relation struct {
	id      int64
	members []member
	tags    tags
}

type member struct {
	way  int64
	role string
}

// A world collects the objects of the island; ids count up from 1.
type world struct {
	nodes     []node
	ways      []way
	relations []relation
}

func (w *world) addNode(p pt, t tags) int64 {
	id := int64(len(w.nodes) + 1)
	ll := p.lonLat()
	w.nodes = append(w.nodes, node{id, int64(math.Round(ll[1] * 1e7)), int64(math.Round(ll[0] * 1e7)), t})
	return id
}

func (w *world) addWay(refs []int64, t tags) int64 {
	id := int64(len(w.ways) + 1)
	w.ways = append(w.ways, way{id, refs, t})
	return id
}

// addRing adds a closed way.
func (w *world) addRing(ring []pt, t tags) int64 {
	refs := w.addNodes(ring)
	return w.addWay(append(refs, refs[0]), t)
}

func (w *world) addNodes(line []pt) []int64 {
	refs := make([]int64, len(line))
	for i, p := range line {
		refs[i] = w.addNode(p, nil)
	}
	return refs
}

func (w *world) addRelation(members []member, t tags) int64 {
	id := int64(len(w.relations) + 1)
	w.relations = append(w.relations, relation{id, members, t})
	return id
}

// point is where a node lies.
func (w *world) point(id int64) orb.Point {
	n := w.nodes[id-1]
	return orb.Point{float64(n.lon) / 1e7, float64(n.lat) / 1e7}
}
