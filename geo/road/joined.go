package road

import (
	"math/bits"
)

// This file finds the roads that are joined with most of the network: a place should not be reached over a piece of road that
// leads nowhere.

// joined says that an edge can be reached from most of the network, and left to it.
func (r *Router) joined(e uint32) bool { return has(r.main, e) }

func has(set []uint64, i uint32) bool { return set[i/64]>>(i%64)&1 == 1 }

func set(bit []uint64, i uint32) { bit[i/64] |= 1 << (i % 64) }

// findJoined marks the edges that one may be on after a way from the main part, whatever was driven on it, and from which, begun
// at the edge, there is a way to the main part. Behind a forbidden turn those are different states.
func (r *Router) findJoined() {
	n := r.Net
	ahead, behind := r.mainPart()
	reached := make([]uint64, (n.Edges()+63)/64)
	for s := range uint32(n.States()) {
		for a, end := n.Arcs(s); a < end && has(ahead, s); a++ {
			if r.arcCost(a) != noWay {
				set(reached, n.Dir(a)>>1)
			}
		}
	}
	r.main = make([]uint64, len(reached))
	for dir, cost := range r.cost {
		if e := uint32(dir) >> 1; cost != noWay && has(reached, e) {
			if s, ok := n.Arrival(uint32(dir)); ok && has(behind, s) {
				set(r.main, e)
			}
		}
	}
}

// mainPart finds the part of the network whose states reach each other: the largest of a few tries from the top of the hierarchy.
// It returns the states that it reaches and those that reach it.
func (r *Router) mainPart() (ahead, behind []uint64) {
	n := r.Net
	states := n.States()
	back := n.Reversed()
	most := 0
	for try, s := 0, states-1; try < 20 && s >= 0; try, s = try+1, s-1-states/50 {
		to := r.flood(uint32(s), n.Arcs, func(i uint32) (uint32, uint32) { return n.Head(i), i })
		from := r.flood(uint32(s), func(s uint32) (uint32, uint32) { return back.First[s], back.First[s+1] },
			func(i uint32) (uint32, uint32) { return n.ArcTail(back.Head[i]), back.Head[i] })
		count := 0
		for i := range to {
			count += bits.OnesCount64(to[i] & from[i])
		}
		if count > most {
			ahead, behind, most = to, from, count
		}
		if 2*most > states {
			break
		}
	}
	return ahead, behind
}

// flood marks the states that a search from one reaches. arcs says where the arcs of a state are in a list, and arc what is
// there: a state with the arc to it.
func (r *Router) flood(s uint32, arcs func(s uint32) (lo, hi uint32), arc func(i uint32) (state, arc uint32)) []uint64 {
	seen := make([]uint64, (r.Net.States()+63)/64)
	set(seen, s)
	for stack := []uint32{s}; len(stack) > 0; {
		s := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		for i, end := arcs(s); i < end; i++ {
			if t, a := arc(i); !has(seen, t) && r.arcCost(a) != noWay {
				set(seen, t)
				stack = append(stack, t)
			}
		}
	}
	return seen
}
