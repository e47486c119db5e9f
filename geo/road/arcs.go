package road

import "slices"

// This file makes the arcs between states from edges and forbidden turns.

// arcs returns the first and one past the last arc out of a state.
func (n *Network) arcs(s uint32) (lo, hi uint32) { return n.first[s], n.first[s+1] }

// tail returns the junction from which an edge is entered in a direction, head the one that it leads to.
func (n *Network) tailOf(dir uint32) uint32 {
	if dir&1 == 0 {
		return n.from[dir>>1]
	}
	return n.to[dir>>1]
}

// after returns the state after driving a direction on from a state. Where that is forbidden it is the one after driving the
// direction from anywhere; ok is false if the direction does not exist.
func (n *Network) after(state, dir uint32) (next uint32, ok bool) {
	lo, hi := n.arcs(state)
	for a := lo; a < hi; a++ {
		if n.edge[a]&^heavyOnly == dir {
			return n.head[a], true
		}
	}
	return n.arrival(dir)
}

// comings returns the further states of a junction, besides the plain one.
func (n *Network) comings(plain uint32) []coming {
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

// arrival returns the state after driving a direction; ok is false if the direction does not exist.
func (n *Network) arrival(dir uint32) (state uint32, ok bool) {
	lo, hi := n.arcs(n.tailOf(dir))
	for a := lo; a < hi; a++ {
		if n.edge[a] == dir {
			return n.head[a], true
		}
	}
	return 0, false
}

// joinArcs lists the arcs out of every state: edges in order, along before against.
func (n *Network) joinArcs() {
	arrival := make(map[uint32]uint32, len(n.extra)) // direction → state, where that is not the plain one
	count := make([]uint32, len(n.at)+1)
	deep := make(map[uint32]bool, len(n.onward))
	for _, o := range n.onward {
		deep[o.to] = true
	}
	for i, c := range n.extra {
		if !deep[uint32(i)] {
			arrival[c.in] = c.state
		}
	}
	over := make(map[uint64]uint32, len(n.onward)) // state, direction → state after it, where that depends on the way to it
	for _, o := range n.onward {
		over[uint64(n.extra[o.from].state)<<32|uint64(o.dir)] = n.extra[o.to].state
	}
	each := func(fn func(tail, dir uint32)) {
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
	each(func(tail, _ uint32) { count[tail+1]++ })
	for _, c := range n.extra {
		lasting := 0
		for _, b := range c.bans {
			if b&heavyOnly == 0 {
				lasting++
			}
		}
		count[c.state+1] = count[c.plain+1] - uint32(lasting)
	}
	for s := range n.at {
		count[s+1] += count[s]
	}
	n.first = count
	n.head, n.edge = make([]uint32, count[len(n.at)]), make([]uint32, count[len(n.at)])
	fill := slices.Clone(count)
	each(func(tail, dir uint32) {
		head, special := arrival[dir]
		if !special {
			head = n.tailOf(dir ^ 1)
		}
		n.head[fill[tail]], n.edge[fill[tail]] = head, dir
		fill[tail]++
	})
	for _, c := range n.extra {
		lo, hi := n.arcs(c.plain)
		for a := lo; a < hi; a++ {
			dir := n.edge[a]
			if slices.Contains(c.bans, dir) {
				continue
			}
			head, depends := over[uint64(c.state)<<32|uint64(dir)]
			if !depends {
				head = n.head[a]
			}
			if slices.Contains(c.bans, dir|heavyOnly) {
				dir |= heavyOnly
			}
			n.head[fill[c.state]], n.edge[fill[c.state]] = head, dir
			fill[c.state]++
		}
	}
}

// undirected returns for every state the others that an arc joins it with, ascending.
func (n *Network) undirected() graph {
	states := uint32(len(n.at))
	g := graph{first: make([]uint32, states+1)}
	each := func(fn func(s, t uint32)) {
		for s := range states {
			lo, hi := n.arcs(s)
			for a := lo; a < hi; a++ {
				if t := n.head[a]; t != s { // a loop joins nothing
					fn(s, t)
				}
			}
		}
	}
	each(func(s, t uint32) {
		g.first[s+1]++
		g.first[t+1]++
	})
	for s := range states {
		g.first[s+1] += g.first[s]
	}
	g.head = make([]uint32, g.first[states])
	fill := slices.Clone(g.first)
	each(func(s, t uint32) {
		g.head[fill[s]], g.head[fill[t]] = t, s
		fill[s]++
		fill[t]++
	})
	// Each neighbour once.
	kept := uint32(0)
	for s := range states {
		list := g.head[g.first[s]:g.first[s+1]]
		slices.Sort(list)
		g.first[s] = kept
		for i, t := range list {
			if i == 0 || t != list[i-1] {
				g.head[kept] = t
				kept++
			}
		}
	}
	g.first[states] = kept
	g.head = g.head[:kept]
	return g
}

// renumbered numbers states by rank, and edges by the lower of their ends. Without arcs.
func (n *Network) renumbered(rank []uint32) *Network {
	m := &Network{at: make([]spot, len(n.at)), roads: n.roads, date: n.date, notes: n.notes}
	for s, r := range rank {
		m.at[r] = n.at[s]
	}
	// Sorting numbers of one kind everywhere keeps the program small and is faster: the key above, what it is of below.
	order := make([]uint64, len(n.from)) // new number → old, below the lower rank
	for e := range order {
		order[e] = uint64(min(rank[n.from[e]], rank[n.to[e]]))<<32 | uint64(e)
	}
	slices.Sort(order)
	edges := len(order)
	m.from, m.to, m.cm, m.road = make([]uint32, edges), make([]uint32, edges), make([]uint32, edges), make([]uint32, edges)
	m.shape, m.bends = make([]uint32, edges+1), make([]byte, 0, len(n.bends))
	number := make([]uint32, edges)
	for i, key := range order {
		o := uint32(key)
		number[o] = uint32(i)
		m.from[i], m.to[i], m.cm[i], m.road[i] = rank[n.from[o]], rank[n.to[o]], n.cm[o], n.road[o]
		m.bends = append(m.bends, n.bends[n.shape[o]:n.shape[o+1]]...)
		m.shape[i+1] = uint32(len(m.bends))
	}
	renamed := func(dir uint32) uint32 { return dir&heavyOnly | number[dir&^heavyOnly>>1]<<1 | dir&1 }
	sorted := make([]uint64, len(n.extra))
	for i, c := range n.extra {
		sorted[i] = uint64(rank[c.plain])<<32 | uint64(i)
	}
	slices.Sort(sorted)
	place := make([]uint32, len(sorted)) // old index → new
	for i, key := range sorted {
		place[uint32(key)] = uint32(i)
		c := n.extra[uint32(key)]
		x := coming{rank[c.plain], rank[c.state], renamed(c.in), nil}
		for _, b := range c.bans {
			x.bans = append(x.bans, renamed(b))
		}
		slices.Sort(x.bans)
		m.extra = append(m.extra, x)
	}
	for _, d := range n.doubts {
		x := doubt{nil, d.only, d.heavy, d.text}
		for _, dir := range d.dirs {
			x.dirs = append(x.dirs, renamed(dir))
		}
		m.doubts = append(m.doubts, x)
	}
	keys := make([]uint64, len(n.onward))
	for i, o := range n.onward {
		keys[i] = uint64(place[o.from])<<32 | uint64(i)
	}
	slices.Sort(keys)
	for _, key := range keys {
		o := n.onward[uint32(key)]
		m.onward = append(m.onward, onward{place[o.from], renamed(o.dir), place[o.to]})
	}
	return m
}
