package roads

import (
	"math"

	"ullage/geo/road/net"
)

// sharpCos is the cosine of 150°: a turn that goes back nearly the way it came.
const sharpCos = -0.866

// A roadEnd is where a one-way road ends or begins.
type roadEnd struct {
	way    int64
	road   *net.Road
	dx, dy float64 // heading, of length 1
}

// sharpTurns forbids what no sign does: to turn from one carriageway into the other where they part from or join a single
// road. The data have a junction there, and without this a place beside the other carriageway would seem near. Only between
// one-way roads of one class and name that carry traffic, and only where another road leads on: a hairpin on a one-way road
// stays, and a sharp exit. Common practice
// of routers, no source.
func sharpTurns(in *net.Input) (list []net.Turn) {
	arrive, leave := oneWayEnds(in)
	uses := usesOf(in)
	for _, w := range in.Ways { // in order of ways, not of the map
		for _, v := range []int32{w.Nodes[0], w.Nodes[len(w.Nodes)-1]} {
			for _, a := range arrive[v] {
				for _, b := range leave[v] {
					same := a.road.Class == b.road.Class && a.road.Name == b.road.Name
					if a.way == w.ID && b.way != a.way && same && uses[v] > 2 && a.dx*b.dx+a.dy*b.dy < sharpCos {
						list = append(list, net.Turn{From: a.way, To: b.way, Via: v})
					}
				}
			}
		}
	}
	return list
}

// usesOf counts the pieces of road that meet at each node, up to about 100.
func usesOf(in *net.Input) []uint8 {
	uses := make([]uint8, len(in.Nodes))
	for _, w := range in.Ways {
		for i, v := range w.Nodes {
			uses[v] = min(uses[v]+1, 100)
			if i > 0 && i < len(w.Nodes)-1 {
				uses[v] = min(uses[v]+1, 100)
			}
		}
	}
	return uses
}

// oneWayEnds returns, by node, how one-way roads that carry traffic arrive and leave.
func oneWayEnds(in *net.Input) (arrive, leave map[int32][]roadEnd) {
	arrive, leave = map[int32][]roadEnd{}, map[int32][]roadEnd{}
	for k := range in.Ways {
		w := &in.Ways[k]
		back := w.Road.Access[0] == net.Closed
		if w.Road.Class > net.Tertiary || back == (w.Road.Access[1] == net.Closed) {
			continue
		}
		nodes, n := w.Nodes, len(w.Nodes)
		first, second, before, last := nodes[0], nodes[1], nodes[n-2], nodes[n-1]
		if back {
			first, second, before, last = last, before, second, first
		}
		dx, dy := heading(in, before, last)
		arrive[last] = append(arrive[last], roadEnd{w.ID, &w.Road, dx, dy})
		dx, dy = heading(in, first, second)
		leave[first] = append(leave[first], roadEnd{w.ID, &w.Road, dx, dy})
	}
	return arrive, leave
}

// heading is the direction from one node to the next, of length 1.
func heading(in *net.Input, a, b int32) (dx, dy float64) {
	p, q := in.Nodes[a].Point, in.Nodes[b].Point
	dx, dy = (q[0]-p[0])*math.Cos(p[1]*math.Pi/180), q[1]-p[1]
	length := math.Hypot(dx, dy)
	return dx / length, dy / length
}
