package road

import (
	"math"

	"ullage/geo/road/net"
)

// An Aim is what a way should have least of.
type Aim uint8

const (
	Fastest Aim = iota
	Shortest
)

// noWay is the cost of what the vehicle may not drive.
const noWay = net.MaxCost

// guestFactor is how much farther a road for guests only counts, so that a way through it is not taken for a short cut.
const guestFactor = 20

// A Router answers for one vehicle and one aim. It is immutable and safe for use by many goroutines; each makes its own
// [Router.Query].
type Router struct {
	Net     *net.Network
	Vehicle net.Vehicle
	Aim     Aim

	cost     []uint32 // direction → cost of the whole edge; noWay if closed
	up, down []uint32 // upward arc → cost from its lower to its upper end, and back
	main     []uint64 // bit by edge: joined with most of the network, both ways
}

// weigh fills the costs of the edges, from one look at each road.
func (r *Router) weigh() {
	n := r.Net
	roads := n.Roads()
	perCm := make([]float64, 2*len(roads)) // cost of a centimetre; 0: closed
	for i := range roads {
		road := &roads[i]
		for d := range 2 {
			if r.Vehicle.Closes(road, d).Why != net.MayDrive {
				continue
			}
			c := 1.0
			if r.Aim == Fastest {
				c = msPerCm(r.Vehicle.Kmh(road, d))
			}
			if r.Vehicle.Guest(road, d) {
				c *= guestFactor
			}
			perCm[2*i+d] = c
		}
	}
	for e := range uint32(n.Edges()) {
		for d := range uint32(2) {
			if c := perCm[2*n.RoadIndex(e)+d]; c > 0 {
				r.cost[2*e+d] = uint32(min(max(1, math.Round(c*float64(n.LengthCm(e)))), net.MaxCost-1))
			} else {
				r.cost[2*e+d] = noWay
			}
		}
	}
}

// msPerCm: 1 km/h is 100,000 cm in 3,600,000 ms.
func msPerCm(kmh float64) float64 { return 36 / kmh }

// arcCost returns the cost of an arc; noWay if the vehicle may not take it.
func (r *Router) arcCost(a uint32) uint32 {
	if r.Net.IsLightOnly(a) && r.Vehicle.MassT > net.HeavyT {
		return noWay
	}
	return r.cost[r.Net.Dir(a)]
}

// ms is the time for a whole direction.
func (r *Router) ms(dir uint32) uint32 {
	e := dir >> 1
	road := r.Net.Road(e)
	if r.Aim == Fastest && road.Access[dir&1] == net.Open && r.cost[dir] != noWay {
		return r.cost[dir]
	}
	return uint32(min(max(1, math.Round(msPerCm(r.Vehicle.Kmh(road, int(dir&1)))*float64(r.Net.LengthCm(e)))), net.MaxCost-1))
}

func (r *Router) stepMs(s net.Step) uint64 {
	return share(r.ms(s.Dir), s, r.Net.LengthCm(s.Edge()))
}

func (r *Router) stepCost(s net.Step) uint64 {
	return share(r.cost[s.Dir], s, r.Net.LengthCm(s.Edge()))
}

// share is the part of a whole edge's number that a step has: exact, so that the parts of an edge add up.
func share(whole uint32, s net.Step, cm uint32) uint64 {
	a, b := uint64(whole)*uint64(s.FromCm)/uint64(cm), uint64(whole)*uint64(s.ToCm)/uint64(cm)
	return max(a, b) - min(a, b)
}

// Bytes returns the memory of the router in bytes, besides the network's.
func (r *Router) Bytes() int { return 4 * (len(r.cost) + len(r.up) + len(r.down)) }
