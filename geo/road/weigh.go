package road

import (
	"context"
	"fmt"
	"math"

	"ullage/geo/road/net"
)

// NewRouter weighs a network for a vehicle and an aim. The network stays as it is. Errors: a vehicle with a negative or
// infinite number, or ctx. Cost O(triangles of the hierarchy), about 1 µs per state.
func NewRouter(ctx context.Context, n *net.Network, v net.Vehicle, aim Aim) (*Router, error) {
	for _, x := range []float64{v.HeightM, v.WidthM, v.LengthM, v.MassT, v.AxleT, v.MarginM, v.TopKmh, v.Factor} {
		if !(x >= 0) || math.IsInf(x, 1) {
			return nil, fmt.Errorf("road: a vehicle's size cannot be %v", x)
		}
	}
	r := &Router{Net: n, Vehicle: v, Aim: aim, cost: make([]uint32, 2*n.Edges())}
	r.weigh()
	if err := r.customize(ctx); err != nil {
		return nil, err
	}
	r.findJoined()
	return r, nil
}

// customize weighs the hierarchy: first its arcs that are roads, then, from the lowest state up, every arc by its lower
// triangles (Dibbelt, Strasser, Wagner 2016, section 7).
func (r *Router) customize(ctx context.Context) error {
	h := r.Net.Hierarchy()
	r.weighRoads()
	at := make([]uint32, r.Net.States()) // upper neighbour of x → the arc to it
	for x := range uint32(len(at)) {
		if x%4096 == 0 {
			if err := ctx.Err(); err != nil {
				return err
			}
		}
		for a := h.UpFirst[x]; a < h.UpFirst[x+1]; a++ {
			at[h.UpHead[a]] = a
		}
		for i := h.DownFirst[x]; i < h.DownFirst[x+1]; i++ {
			v, toX := h.DownTail[i], h.DownArc[i]
			vx, xv := r.up[toX], r.down[toX]
			if vx == noWay && xv == noWay {
				continue
			}
			// All that is above v and above x is above x too.
			for b := toX + 1; b < h.UpFirst[v+1]; b++ {
				xy := at[h.UpHead[b]]
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

// weighRoads weighs the arcs of the hierarchy that are roads; all others are not open.
func (r *Router) weighRoads() {
	n, h := r.Net, r.Net.Hierarchy()
	r.up, r.down = make([]uint32, len(h.UpHead)), make([]uint32, len(h.UpHead))
	for a := range r.up {
		r.up[a], r.down[a] = noWay, noWay
	}
	for s := range uint32(n.States()) {
		lo, hi := n.Arcs(s)
		for a := lo; a < hi; a++ {
			switch t, c := n.Head(a), r.arcCost(a); {
			case c == noWay || t == s:
			case t > s:
				u := h.ArcBetween(s, t)
				r.up[u] = min(r.up[u], c)
			default:
				u := h.ArcBetween(t, s)
				r.down[u] = min(r.down[u], c)
			}
		}
	}
}
