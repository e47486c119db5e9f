package net

import (
	"slices"

	"ullage/geo/road/order"
)

// This file makes the arcs between states from edges and forbidden turns.

// After returns the state after driving a direction on from a state. Where that is forbidden it is the one after driving the
// direction from anywhere; ok is false if the direction does not exist.
func (n *Network) After(state, dir uint32) (next uint32, ok bool) {
	lo, hi := n.Arcs(state)
	for a := lo; a < hi; a++ {
		if n.edge[a]&^heavyOnly == dir {
			return n.head[a], true
		}
	}
	return n.Arrival(dir)
}

// Arrival returns the state after driving a direction; ok is false if the direction does not exist.
func (n *Network) Arrival(dir uint32) (state uint32, ok bool) {
	lo, hi := n.Arcs(n.TailOf(dir))
	for a := lo; a < hi; a++ {
		if n.edge[a] == dir {
			return n.head[a], true
		}
	}
	return 0, false
}

// Comings returns the further states of a junction, besides the plain one.
func (n *Network) Comings(plain uint32) []Coming {
	lo, hi := 0, len(n.extra)
	for lo < hi {
		if m := (lo + hi) / 2; n.extra[m].plain < plain {
			lo = m + 1
		} else {
			hi = m
		}
	}
	end := lo
	for end < len(n.extra) && n.extra[end].plain == plain {
		end++
	}
	return n.extra[lo:end]
}

// joinArcs lists the arcs out of every state: edges in order, along before against.
func (n *Network) joinArcs() {
	count := make([]uint32, len(n.at)+1)
	n.eachOpen(func(tail, _ uint32) { count[tail+1]++ })
	for _, c := range n.extra {
		count[c.State+1] = count[c.plain+1]
		for _, b := range c.bans {
			if b&heavyOnly == 0 {
				count[c.State+1]--
			}
		}
	}
	for s := range n.at {
		count[s+1] += count[s]
	}
	n.first = count
	n.head, n.edge = make([]uint32, count[len(n.at)]), make([]uint32, count[len(n.at)])
	fill := slices.Clone(count)
	arrival := n.arrivals()
	n.eachOpen(func(tail, dir uint32) {
		head, special := arrival[dir]
		if !special {
			head = n.TailOf(dir ^ 1)
		}
		n.head[fill[tail]], n.edge[fill[tail]] = head, dir
		fill[tail]++
	})
	n.joinComings()
}

// eachOpen calls fn for every direction that somebody may drive.
func (n *Network) eachOpen(fn func(tail, dir uint32)) {
	for e := range uint32(len(n.from)) {
		access := n.roads[n.road[e]].Access
		if access[0] != Closed {
			fn(n.from[e], e<<1)
		}
		if access[1] != Closed {
			fn(n.to[e], e<<1|1)
		}
	}
}

// arrivals are the states after directions that lead to no plain state, whatever was driven before.
func (n *Network) arrivals() map[uint32]uint32 {
	deep := make(map[uint32]bool, len(n.onward))
	for _, o := range n.onward {
		deep[o.to] = true
	}
	list := make(map[uint32]uint32, len(n.extra))
	for i, c := range n.extra {
		if !deep[uint32(i)] {
			list[c.in] = c.State
		}
	}
	return list
}

// joinComings copies the arcs of plain states to those of comings, but what is forbidden there.
func (n *Network) joinComings() {
	over := make(map[uint64]uint32, len(n.onward)) // state, direction → state after it, where that depends on the way to it
	for _, o := range n.onward {
		over[uint64(n.extra[o.from].State)<<32|uint64(o.dir)] = n.extra[o.to].State
	}
	for _, c := range n.extra {
		fill := n.first[c.State]
		lo, hi := n.Arcs(c.plain)
		for a := lo; a < hi; a++ {
			dir := n.edge[a]
			if slices.Contains(c.bans, dir) {
				continue
			}
			head, depends := over[uint64(c.State)<<32|uint64(dir)]
			if !depends {
				head = n.head[a]
			}
			if slices.Contains(c.bans, dir|heavyOnly) {
				dir |= heavyOnly
			}
			n.head[fill], n.edge[fill] = head, dir
			fill++
		}
	}
}

// neighboursAbove lists for every state those above it that an arc joins it with.
func (n *Network) neighboursAbove() order.Graph {
	return order.NewGraph(len(n.at), func(add func(low, high uint32)) {
		n.eachJoin(func(s, t uint32) { add(min(s, t), max(s, t)) })
	})
}

// undirected returns for every state the others that an arc joins it with, ascending.
func (n *Network) undirected() order.Graph {
	g := order.NewGraph(len(n.at), func(add func(s, t uint32)) {
		n.eachJoin(func(s, t uint32) {
			add(s, t)
			add(t, s)
		})
	})
	states := uint32(len(n.at))
	// Each neighbour once.
	kept := uint32(0)
	for s := range states {
		list := g.Of(s)
		slices.Sort(list)
		g.First[s] = kept
		for i, t := range list {
			if i == 0 || t != list[i-1] {
				g.Head[kept] = t
				kept++
			}
		}
	}
	g.First[states] = kept
	g.Head = g.Head[:kept]
	return g
}

// eachJoin calls fn for every arc that joins two states.
func (n *Network) eachJoin(fn func(s, t uint32)) {
	for s := range uint32(len(n.at)) {
		lo, hi := n.Arcs(s)
		for a := lo; a < hi; a++ {
			if t := n.head[a]; t != s { // a loop joins nothing
				fn(s, t)
			}
		}
	}
}

// Reversed lists for each state the arcs that lead to it.
func (n *Network) Reversed() order.Graph {
	return order.NewGraph(len(n.at), func(add func(head, arc uint32)) {
		for a, t := range n.head {
			add(t, uint32(a))
		}
	})
}

// ArcTail returns the state that an arc leads away from.
func (n *Network) ArcTail(a uint32) uint32 {
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
