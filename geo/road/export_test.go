package road

// This file shows the oracles to tests on open data, which live outside the package because the reader of map data imports it.

var (
	CompareWithDijkstra = compareWithDijkstra
	OracleCost          = oracleCost
	TestVehicles        = testVehicles
	AnySpot             = anySpot
	Dijkstra            = dijkstra
)

type Seed = seed

// ClassKmh is the speed of a class for comparisons with another router.
func ClassKmh(c Class) float64 { return classKmh[c] }

// Joined says that an edge belongs to the main part of the network.
func (r *Router) Joined(edge uint32) bool { return r.joined(edge) }
