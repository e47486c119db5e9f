package demo

import (
	"math/rand/v2"
	"sync"
)

var theIsland = sync.OnceValue(newIsland)

// Extract is the invented island as .osm.pbf bytes: about 130 kB, the same on
// every call and, on amd64 and wasm, on every machine. The caller may change
// them. The first call of the package costs about 0.1 s, four times that in a
// browser.
func Extract() []byte {
	return encode(&theIsland().world, replication)
}

// newIsland builds it, the same every time.
func newIsland() *island {
	s := &island{rng: rand.New(rand.NewPCG(seed, 1)), corner: map[string]int{}, nodeOf: map[int]int64{}}
	s.shape()
	s.plan()
	s.emitShape()
	s.emitRoads()
	s.emitIslet()
	s.emitStreets()
	s.emitPlaces()
	s.emitServices()
	return s
}
