package road

import (
	"context"
	"fmt"
	"math"
)

// An Aim is what a way should have least of.
type Aim uint8

const (
	Fastest Aim = iota
	Shortest
)

// A cost is whole milliseconds or centimetres, times guestFactor on roads for guests only. Costs up to maxCost add without
// overflow: 24 days, or 21,474 km.
const (
	maxCost = 1<<31 - 1
	noWay   = maxCost
)

// A Router answers for one vehicle and one aim. It is immutable and safe for use by many goroutines; each makes its own
// [Router.Query].
type Router struct {
	Net     *Network
	Vehicle Vehicle
	Aim     Aim

	cost     []uint32 // direction → cost of the whole edge; noWay if closed
	up, down []uint32 // upward arc → cost from its lower to its upper end, and back
	main     []uint64 // bit by edge: joined with most of the network, both ways
}

// Router weighs the network for a vehicle and an aim. The network stays as it is. Errors: a vehicle with a negative or
// infinite number, or ctx. Cost O(triangles of the hierarchy), about 1 µs per state.
func (n *Network) Router(ctx context.Context, v Vehicle, aim Aim) (*Router, error) {
	for _, x := range []float64{v.HeightM, v.WidthM, v.LengthM, v.MassT, v.AxleT, v.MarginM, v.TopKmh, v.Factor} {
		if !(x >= 0) || math.IsInf(x, 1) {
			return nil, fmt.Errorf("road: a vehicle's size cannot be %v", x)
		}
	}
	r := &Router{Net: n, Vehicle: v, Aim: aim, cost: make([]uint32, 2*len(n.from))}
	r.weigh()
	if err := r.customize(ctx); err != nil {
		return nil, err
	}
	r.findJoined()
	return r, nil
}

// weigh fills the costs of the edges, from one look at each road.
func (r *Router) weigh() {
	n := r.Net
	perCm := make([]float64, 2*len(n.roads)) // cost of a centimetre; 0: closed
	for i := range n.roads {
		road := &n.roads[i]
		for d := range 2 {
			if r.Vehicle.Closes(road, d) != "" {
				continue
			}
			c := 1.0
			if r.Aim == Fastest {
				c = msPerCm(r.Vehicle.Kmh(road, d))
			}
			if r.Vehicle.guest(road, d) {
				c *= guestFactor
			}
			perCm[2*i+d] = c
		}
	}
	for e := range n.from {
		for d := range 2 {
			if c := perCm[2*int(n.road[e])+d]; c > 0 {
				r.cost[2*e+d] = uint32(min(max(1, math.Round(c*float64(n.cm[e]))), maxCost-1))
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
	e := r.Net.edge[a]
	if e&heavyOnly != 0 && r.Vehicle.MassT > HeavyT {
		return noWay
	}
	return r.cost[e&^heavyOnly]
}

// customize weighs the hierarchy: first its arcs that are roads, then, from the lowest state up, every arc by its lower
// triangles (Dibbelt, Strasser, Wagner 2016, section 7).
func (r *Router) customize(ctx context.Context) error {
	n, h := r.Net, &r.Net.cch
	r.up, r.down = make([]uint32, len(h.upHead)), make([]uint32, len(h.upHead))
	for a := range r.up {
		r.up[a], r.down[a] = noWay, noWay
	}
	states := uint32(len(n.at))
	for s := range states {
		lo, hi := n.arcs(s)
		for a := lo; a < hi; a++ {
			switch t, c := n.head[a], r.arcCost(a); {
			case c == noWay || t == s:
			case t > s:
				u := h.arcBetween(s, t)
				r.up[u] = min(r.up[u], c)
			default:
				u := h.arcBetween(t, s)
				r.down[u] = min(r.down[u], c)
			}
		}
	}
	at := make([]uint32, states) // upper neighbour of x → the arc to it
	for x := range states {
		if x%4096 == 0 {
			if err := ctx.Err(); err != nil {
				return err
			}
		}
		for a := h.upFirst[x]; a < h.upFirst[x+1]; a++ {
			at[h.upHead[a]] = a
		}
		for i := h.downFirst[x]; i < h.downFirst[x+1]; i++ {
			v, toX := h.downTail[i], h.downArc[i]
			vx, xv := r.up[toX], r.down[toX]
			if vx == noWay && xv == noWay {
				continue
			}
			// All that is above v and above x is above x too.
			for b := toX + 1; b < h.upFirst[v+1]; b++ {
				xy := at[h.upHead[b]]
				if c := xv + r.up[b]; c < r.up[xy] {
					r.up[xy] = c
				}
				if c := r.down[b] + vx; c < r.down[xy] {
					r.down[xy] = c
				}
			}
		}
	}
	return nil
}

// Bytes returns the memory of the router in bytes, besides the network's.
func (r *Router) Bytes() int { return 4 * (len(r.cost) + len(r.up) + len(r.down)) }
