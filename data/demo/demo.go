package demo

import "sync"

var theIsland = sync.OnceValue(newIsland)

// Extract is the invented island as .osm.pbf bytes: about 110 kB, the same on
// every call. The caller may change them.
func Extract() []byte {
	return encode(&theIsland().world, replication)
}
