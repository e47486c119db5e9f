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
