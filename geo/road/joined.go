package road

import "slices"

// This file finds the roads that are joined with most of the network: a place should not be reached over a piece of road that
// leads nowhere.

// joined says that an edge can be reached from most of the network, and left to it.
func (r *Router) joined(e uint32) bool {
	for back := range uint32(2) {
		dir := e<<1 | back
		if r.cost[dir] == noWay {
			continue
		}
		if s, ok := r.Net.arrival(dir); ok && has(r.main, s) && has(r.main, r.Net.tailOf(dir)) {
			return true
		}
	}
	return false
}

func has(bits []uint64, s uint32) bool { return bits[s/64]>>(s%64)&1 == 1 }

// findMain marks the states that most others can reach and be reached from: the best of a few tries from the top of the
// hierarchy.
func (r *Router) findMain() {
	n := r.Net
	states := len(n.at)
	back := n.reversed()
	most := 0
	for try, s := 0, states-1; try < 20 && s >= 0; try, s = try+1, s-1-states/50 {
		ahead := r.flood(uint32(s), n.first, func(i uint32) (uint32, uint32) { return n.head[i], i })
		behind := r.flood(uint32(s), back.first, func(i uint32) (uint32, uint32) { return n.tailAt(back, i), back.head[i] })
		count := 0
		for i := range ahead {
			ahead[i] &= behind[i]
			for w := ahead[i]; w != 0; w &= w - 1 {
				count++
			}
		}
		if count > most {
			r.main, most = ahead, count
		}
		if 2*most > states {
			break
		}
	}
}

// reversed lists for each state the arcs that lead to it.
func (n *Network) reversed() graph {
	g := graph{make([]uint32, len(n.at)+1), make([]uint32, len(n.head))}
	for _, t := range n.head {
		g.first[t+1]++
	}
	for s := range n.at {
		g.first[s+1] += g.first[s]
	}
	fill := slices.Clone(g.first)
	for a, t := range n.head {
		g.head[fill[t]] = uint32(a)
		fill[t]++
	}
	return g
}

// tailAt returns the state from which the arc at a place of a reversed list comes: the one whose arcs hold it.
func (n *Network) tailAt(g graph, i uint32) uint32 {
	a := g.head[i]
	lo, hi := 0, len(n.first)-1
	for lo < hi-1 {
		if m := (lo + hi) / 2; n.first[m] <= a {
			lo = m
		} else {
			hi = m
		}
	}
	return uint32(lo)
}

func (r *Router) flood(s uint32, first []uint32, arc func(i uint32) (state, arc uint32)) []uint64 {
	seen := make([]uint64, (len(r.Net.at)+63)/64)
	seen[s/64] |= 1 << (s % 64)
	for stack := []uint32{s}; len(stack) > 0; {
		s := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		for i := first[s]; i < first[s+1]; i++ {
			if t, a := arc(i); !has(seen, t) && r.arcCost(a) != noWay {
				seen[t/64] |= 1 << (t % 64)
				stack = append(stack, t)
			}
		}
	}
	return seen
}
