package road

import "slices"

// A sweep is a search from many states at once to many others: up the hierarchy from the seeds, then down to what is asked
// for. Only ancestors in the elimination tree are visited, each once (as PHAST and RPHAST do on contraction hierarchies:
// D. Delling, A. Goldberg, A. Nowatzyk, R. Werneck, J. Parallel Distrib. Comput. 73, 2013).
type sweep struct {
	r        *Router
	up, down []uint32 // costs of upward arcs, taken up and taken down
	dist     []uint32
	prev     []uint32 // state before; fromAbove if that one is higher
	mark     []uint8
	seeds    []uint32
	seen     []uint32 // states whose dist may be set
	on       map[uint32]tie
}

// A tie is a state of a leg: the number of its station and what driving there along the leg costs.
type tie struct {
	station int
	cost    uint32
}

// ties remembers the states of a leg.
func (s *sweep) ties(leg []station, cost func(station) uint32) {
	s.on = make(map[uint32]tie, len(leg))
	for i, x := range leg {
		if x.state != none {
			s.on[x.state] = tie{i, cost(x)}
		}
	}
}

// tie returns the station of a state if driving there along the leg costs the same.
func (s *sweep) tie(state, cost uint32) (station int, ok bool) {
	t, ok := s.on[state]
	return t.station, ok && t.cost == cost
}

func (s *sweep) tied(state, cost uint32) bool {
	_, ok := s.tie(state, cost)
	return ok
}

const fromAbove = 1 << 31

// newSweep searches ahead, or with behind against the driving.
func newSweep(r *Router, behind bool) *sweep {
	x := newReach(len(r.Net.at))
	s := &sweep{r: r, up: r.up, down: r.down, dist: x.dist, prev: x.prev, mark: make([]uint8, len(x.dist))}
	if behind {
		s.up, s.down = r.down, r.up
	}
	return s
}

func (s *sweep) reset() {
	for _, v := range s.seen {
		s.dist[v] = noWay
	}
	s.seen, s.seeds = s.seen[:0], s.seeds[:0]
}

func (s *sweep) put(v, cost uint32) {
	if cost < s.dist[v] {
		s.dist[v], s.prev[v] = cost, v
	}
	s.seeds = append(s.seeds, v)
}

// above lists states and all above them, ascending.
func (s *sweep) above(list []uint32) (all []uint32) {
	h := &s.r.Net.cch
	for _, v := range list {
		for v != none && s.mark[v] == 0 {
			s.mark[v] = 1
			all = append(all, v)
			v = h.parent(v)
		}
	}
	slices.Sort(all)
	for _, v := range all {
		s.mark[v] = 0
	}
	return all
}

// run searches from what was put to the targets, whose dist is exact afterwards.
func (s *sweep) run(targets []uint32) {
	h := &s.r.Net.cch
	s.seen = s.above(s.seeds)
	for _, v := range s.seen {
		d := s.dist[v]
		if d == noWay {
			continue
		}
		lo, hi := h.upFirst[v], h.upFirst[v+1]
		costs := s.up[lo:hi]
		for i, t := range h.upHead[lo:hi] {
			if c := d + costs[i]; c < s.dist[t] {
				s.dist[t], s.prev[t] = c, v
			}
		}
	}
	below := s.above(targets)
	for _, v := range slices.Backward(below) {
		lo, hi := h.upFirst[v], h.upFirst[v+1]
		costs := s.down[lo:hi]
		d, p := s.dist[v], s.prev[v]
		for i, t := range h.upHead[lo:hi] {
			if c := s.dist[t] + costs[i]; c < d {
				d, p = c, t|fromAbove
			}
		}
		s.dist[v], s.prev[v] = d, p
	}
	s.seen = append(s.seen, below...)
}

// everywhere searches from what was put to all states, as far as a limit; what is farther may be left at noWay.
func (s *sweep) everywhere(limit uint32) {
	s.run(nil)
	h := &s.r.Net.cch
	for v := len(s.dist) - 1; v >= 0; v-- {
		lo, hi := h.upFirst[v], h.upFirst[v+1]
		costs, d := s.down[lo:hi], s.dist[v]
		for i, t := range h.upHead[lo:hi] {
			d = min(d, s.dist[t]+costs[i])
		}
		if d > limit {
			d = noWay
		}
		s.dist[v] = d
	}
	for v := range s.dist {
		if s.dist[v] != noWay {
			s.seen = append(s.seen, uint32(v))
		}
	}
}
