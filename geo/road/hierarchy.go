package road

import (
	"math"
	"slices"
)

// A hierarchy lists for each state the states above it that it can reach through states below itself only, whatever the
// weights: the chordal completion of the network by its order (Dibbelt, Strasser, Wagner 2016, section 4). An upward arc
// stands for both directions between its two states.
type hierarchy struct {
	upFirst   []uint32 // state → its upward arcs
	upHead    []uint32 // arc → upper state; ascending for each state, the first is the parent in the elimination tree
	downFirst []uint32 // state → the upward arcs that end there
	downTail  []uint32 // their lower states, ascending
	downArc   []uint32 // their upward arcs
}

func (h *hierarchy) bytes() int {
	return 4 * (len(h.upFirst) + len(h.upHead) + len(h.downFirst) + len(h.downTail) + len(h.downArc))
}

const none = ^uint32(0)

// parent returns the lowest state above s, or none at a root.
func (h *hierarchy) parent(s uint32) uint32 {
	if h.upFirst[s] == h.upFirst[s+1] {
		return none
	}
	return h.upHead[h.upFirst[s]]
}

// arcBetween returns the upward arc from x to y, which must exist.
func (h *hierarchy) arcBetween(x, y uint32) uint32 {
	lo, hi := h.upFirst[x], h.upFirst[x+1]
	i, ok := slices.BinarySearch(h.upHead[lo:hi], y)
	if !ok {
		panic("road: arc is not in the hierarchy")
	}
	return lo + uint32(i)
}

// newHierarchy contracts all states in order. Time and memory are linear in the arcs made.
func newHierarchy(n *Network) hierarchy {
	h, _ := hierarchyBelow(n, math.MaxInt)
	return h
}

// hierarchyBelow gives up, with ok false, when there are more than most arcs.
func hierarchyBelow(n *Network, most int) (h hierarchy, ok bool) {
	states := len(n.at)
	// 1. Original neighbours above each state.
	above := neighboursAbove(n)
	h = hierarchy{upFirst: make([]uint32, states+1)}
	child := make([]uint32, states) // state → last child; siblings chained
	sibling := make([]uint32, states)
	for s := range child {
		child[s], sibling[s] = none, none
	}
	seen := make([]uint32, states) // seen[t] == s+1: t is already above s
	h.upHead = make([]uint32, 0, 4*states)
	// 2. What is above a state: its neighbours, and what is above its children, but itself.
	for s := range uint32(states) {
		start := len(h.upHead)
		if start > most {
			return h, false
		}
		add := func(t uint32) {
			if t != s && seen[t] != s+1 {
				seen[t] = s + 1
				h.upHead = append(h.upHead, t)
			}
		}
		for _, t := range above.head[above.first[s]:above.first[s+1]] {
			add(t)
		}
		for c := child[s]; c != none; c = sibling[c] {
			for _, t := range h.upHead[h.upFirst[c]:h.upFirst[c+1]] {
				add(t)
			}
		}
		list := h.upHead[start:]
		slices.Sort(list)
		h.upFirst[s+1] = uint32(len(h.upHead))
		if len(list) > 0 {
			sibling[s] = child[list[0]]
			child[list[0]] = s
		}
	}
	h.upHead = slices.Clip(h.upHead)
	h.turnRound()
	return h, true
}

func neighboursAbove(n *Network) graph {
	states := uint32(len(n.at))
	g := graph{first: make([]uint32, states+1)}
	each := func(fn func(low, high uint32)) {
		for s := range states {
			lo, hi := n.arcs(s)
			for a := lo; a < hi; a++ {
				if t := n.head[a]; t != s {
					fn(min(s, t), max(s, t))
				}
			}
		}
	}
	each(func(low, _ uint32) { g.first[low+1]++ })
	for s := range states {
		g.first[s+1] += g.first[s]
	}
	g.head = make([]uint32, g.first[states])
	fill := slices.Clone(g.first)
	each(func(low, high uint32) {
		g.head[fill[low]] = high
		fill[low]++
	})
	return g
}

// turnRound lists the arcs by their upper end.
func (h *hierarchy) turnRound() {
	states := len(h.upFirst) - 1
	h.downFirst = make([]uint32, states+1)
	for _, t := range h.upHead {
		h.downFirst[t+1]++
	}
	for s := range states {
		h.downFirst[s+1] += h.downFirst[s]
	}
	h.downTail, h.downArc = make([]uint32, len(h.upHead)), make([]uint32, len(h.upHead))
	fill := slices.Clone(h.downFirst)
	for s := range uint32(states) {
		for a := h.upFirst[s]; a < h.upFirst[s+1]; a++ {
			t := h.upHead[a]
			h.downTail[fill[t]], h.downArc[fill[t]] = s, a
			fill[t]++
		}
	}
}
