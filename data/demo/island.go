package demo

import (
	"math"
	"math/rand/v2"
	"slices"
)

// seed fixes everything that is drawn by lot.
const seed = 20270611

// replication is the date of the data: 2026-11-01 00:00 UTC.
const replication = 1793491200

// This file is the country and what all steps ask of it.

// An island is the whole country: its world of objects and what later steps
// look up in it.
type island struct {
	rng     *rand.Rand
	world   world
	main    *region   // the main island's shore
	shores  []*region // all of them
	lake    *region
	rivers  []river
	net     *network
	corner  map[string]int // of a town
	towns   []town         // with the villages, at their corners
	roads   []road
	nodeOf  map[int]int64 // corner → node
	roadSet []segment     // all that a service point may stand beside
}

// A segment is one side of a road and its class.
type segment struct {
	a, b  pt
	class class
}

// onLand says whether a point lies on any island and not in the lake.
func (s *island) onLand(p pt) bool {
	return !s.lake.contains(p) && slices.ContainsFunc(s.shores, func(r *region) bool { return r.contains(p) })
}

// toSea is how far along a straight line the sea begins and ends, in shares.
func (s *island) toSea(a, b pt) (from, to float64) {
	const steps = 400
	from, to = math.NaN(), 0
	for i := range steps {
		f := float64(i) / steps
		if !s.main.contains(a.lerp(b, f)) {
			if math.IsNaN(from) {
				from = f
			}
			to = f
		}
	}
	return from, to
}

// crossesRiver says whether a river runs between two points.
func (s *island) crossesRiver(a, b pt) bool {
	for _, v := range s.rivers {
		for k := 1; k < len(v.line) && v.near(a, b); k++ {
			if _, _, ok := cross(a, b, v.line[k-1], v.line[k]); ok {
				return true
			}
		}
	}
	return false
}

// remember keeps the sides of a road for those who settle beside it.
func (s *island) remember(r road) {
	for i := 1; i < len(r.line); i++ {
		s.roadSet = append(s.roadSet, segment{r.line[i-1], r.line[i], r.class})
	}
}
