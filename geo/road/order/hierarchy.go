package order

import (
	"slices"
)

// A Hierarchy lists for each state the states above it that it can reach through states below itself only, whatever the
// weights: the chordal completion of the network by its order (Dibbelt, Strasser, Wagner 2016, section 4). An upward arc
// stands for both directions between its two states.
type Hierarchy struct {
	UpFirst   []uint32 // state → its upward arcs
	UpHead    []uint32 // arc → upper state; ascending for each state, the first is the parent in the elimination tree
	DownFirst []uint32 // state → the upward arcs that end there
	DownTail  []uint32 // their lower states, ascending
	DownArc   []uint32 // their upward arcs
}

func (h *Hierarchy) Bytes() int {
	return 4 * (len(h.UpFirst) + len(h.UpHead) + len(h.DownFirst) + len(h.DownTail) + len(h.DownArc))
}

const None = ^uint32(0)

// Parent returns the lowest state above s, or none at a root.
func (h *Hierarchy) Parent(s uint32) uint32 {
	if h.UpFirst[s] == h.UpFirst[s+1] {
		return None
	}
	return h.UpHead[h.UpFirst[s]]
}

// ArcBetween returns the upward arc from x to y, which must exist.
func (h *Hierarchy) ArcBetween(x, y uint32) uint32 {
	lo, hi := h.UpFirst[x], h.UpFirst[x+1]
	i, ok := slices.BinarySearch(h.UpHead[lo:hi], y)
	if !ok {
		panic("road: arc is not in the hierarchy")
	}
	return lo + uint32(i)
}

// Contract contracts all states in the order of their numbers; above lists for each its neighbours above it. It gives up, with
// ok false, when there are more than most arcs. Time and memory are linear in the arcs made.
func Contract(above Graph, most int) (h Hierarchy, ok bool) {
	states := len(above.First) - 1
	h = Hierarchy{UpFirst: make([]uint32, states+1)}
	child := make([]uint32, states) // state → last child; siblings chained
	sibling := make([]uint32, states)
	for s := range child {
		child[s], sibling[s] = None, None
	}
	seen := make([]uint32, states) // seen[t] == s+1: t is already above s
	h.UpHead = make([]uint32, 0, 4*states)
	// What is above a state: its neighbours, and what is above its children, but itself.
	for s := range uint32(states) {
		start := len(h.UpHead)
		if start > most {
			return h, false
		}
		add := func(t uint32) {
			if t != s && seen[t] != s+1 {
				seen[t] = s + 1
				h.UpHead = append(h.UpHead, t)
			}
		}
		for _, t := range above.Of(s) {
			add(t)
		}
		for c := child[s]; c != None; c = sibling[c] {
			for _, t := range h.UpHead[h.UpFirst[c]:h.UpFirst[c+1]] {
				add(t)
			}
		}
		list := h.UpHead[start:]
		slices.Sort(list)
		h.UpFirst[s+1] = uint32(len(h.UpHead))
		if len(list) > 0 {
			sibling[s] = child[list[0]]
			child[list[0]] = s
		}
	}
	h.UpHead = slices.Clip(h.UpHead)
	h.turnRound()
	return h, true
}

// turnRound lists the arcs by their upper end.
func (h *Hierarchy) turnRound() {
	states := len(h.UpFirst) - 1
	h.DownFirst = make([]uint32, states+1)
	for _, t := range h.UpHead {
		h.DownFirst[t+1]++
	}
	for s := range states {
		h.DownFirst[s+1] += h.DownFirst[s]
	}
	h.DownTail, h.DownArc = make([]uint32, len(h.UpHead)), make([]uint32, len(h.UpHead))
	fill := slices.Clone(h.DownFirst)
	for s := range uint32(states) {
		for a := h.UpFirst[s]; a < h.UpFirst[s+1]; a++ {
			t := h.UpHead[a]
			h.DownTail[fill[t]], h.DownArc[fill[t]] = s, a
			fill[t]++
		}
	}
}
