package road

import (
	"ullage/geo/road/net"
)

// This file shows the oracles to tests on open data, which live outside the package because the reader of map data imports it.

var (
	CompareWithDijkstra = compareWithDijkstra
	OracleCost          = oracleCost
	TestVehicles        = testVehicles
	AnySpot             = anySpot
	Dijkstra            = dijkstra
)

type Seed = seed

// Joined says that an edge belongs to the main part of the network.
func (r *Router) Joined(edge uint32) bool { return r.joined(edge) }

// StatesOf lists the states after each step that ends at a junction.
func StatesOf(n *net.Network, steps []net.Step) (list []uint32) {
	state, _ := n.Arrival(steps[0].Dir)
	list = append(list, state)
	for _, s := range steps[1 : len(steps)-1] {
		state, _ = n.After(state, s.Dir)
		list = append(list, state)
	}
	return list
}

// StepCost is the cost of a step.
func (r *Router) StepCost(s net.Step) uint64 { return r.stepCost(s) }

// SeedAt begins a search at a state.
func SeedAt(state uint32) Seed { return Seed{state: state} }
