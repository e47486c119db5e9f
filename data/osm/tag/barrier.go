package tag

import (
	"ullage/data/osm/file"
	"ullage/geo/road/net"
)

// A Barrier stands on a node: how it is passed if no access tag says more.
type Barrier struct {
	Value string
	net.Access
	Gate bool // may be shut: nothing says that it is open
}

// Barriers that matter to a vehicle. Source: Key:barrier; what stands open by default is after a general routing engine,
// OSRM, profiles/car.lua, barrier_whitelist. Walls, fences and kerbs are not put on roads.
var Barriers = []Barrier{
	{"gate", net.Guests, true}, {"lift_gate", net.Guests, true}, {"swing_gate", net.Guests, true}, {"sliding_gate", net.Guests, true},
	{"hampshire_gate", net.Guests, true}, {"bump_gate", net.Guests, true}, {"chain", net.Closed, false}, {"bollard", net.Closed, false},
	{"block", net.Closed, false}, {"bar", net.Closed, false}, {"jersey_barrier", net.Closed, false}, {"log", net.Closed, false},
	{"debris", net.Closed, false}, {"planter", net.Closed, false}, {"rope", net.Closed, false}, {"spikes", net.Closed, false},
	{"bus_trap", net.Closed, false}, {"sump_buster", net.Closed, false}, {"cycle_barrier", net.Closed, false},
	{"motorcycle_barrier", net.Closed, false}, {"barrier", net.Closed, false}, {"yes", net.Closed, false},
	{"height_restrictor", net.Open, false}, {"width_restrictor", net.Open, false}, {"toll_booth", net.Open, false},
}

// BarrierOf returns the barrier that a node is; false for none.
func BarrierOf(t file.Tags) (Barrier, bool) {
	for _, b := range Barriers {
		if t["barrier"] == b.Value {
			return b, true
		}
	}
	return Barrier{}, false
}
