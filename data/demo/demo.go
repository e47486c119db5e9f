package demo

import "sync"

var theIsland = sync.OnceValue(newIsland)

// Extract is the invented island as .osm.pbf bytes: about 130 kB, the same on
// every call and, on amd64 and wasm, on every machine. The caller may change
// them. The first call of the package costs about 0.1 s, four times that in a
// browser.
func Extract() []byte {
	return encode(&theIsland().world, replication)
}
