package road

import (
	"slices"

	"ullage/geo/road/order"
)

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
}

const fromAbove = 1 << 31

func newSweep(r *Router, h heading) *sweep {
	x := newReach(r.Net.States())
	s := &sweep{r: r, up: r.up, down: r.down, dist: x.dist, prev: x.prev, mark: make([]uint8, len(x.dist))}
	if h == behind {
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
	h := s.r.Net.Hierarchy()
	for _, v := range list {
		for v != order.None && s.mark[v] == 0 {
			s.mark[v] = 1
			all = append(all, v)
			v = h.Parent(v)
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
	h := s.r.Net.Hierarchy()
	s.seen = s.above(s.seeds)
	for _, v := range s.seen {
		d := s.dist[v]
		if d == noWay {
			continue
		}
		lo, hi := h.UpFirst[v], h.UpFirst[v+1]
		costs := s.up[lo:hi]
		for i, t := range h.UpHead[lo:hi] {
			if c := d + costs[i]; c < s.dist[t] {
				s.dist[t], s.prev[t] = c, v
			}
		}
	}
	below := s.above(targets)
	for _, v := range slices.Backward(below) {
		lo, hi := h.UpFirst[v], h.UpFirst[v+1]
		costs := s.down[lo:hi]
		d, p := s.dist[v], s.prev[v]
		for i, t := range h.UpHead[lo:hi] {
			if c := s.dist[t] + costs[i]; c < d {
				d, p = c, t|fromAbove
			}
		}
		s.dist[v], s.prev[v] = d, p
	}
	s.seen = append(s.seen, below...)
}

// everywhere searches from seeds to all states, as far as a limit; what is farther may be left at noWay.
func (s *sweep) everywhere(seeds []seed, limit uint32) {
	s.reset()
	for _, x := range seeds {
		s.put(x.state, x.cost)
	}
	s.run(nil)
	h := s.r.Net.Hierarchy()
	for v := len(s.dist) - 1; v >= 0; v-- {
		lo, hi := h.UpFirst[v], h.UpFirst[v+1]
		costs, d := s.down[lo:hi], s.dist[v]
		for i, t := range h.UpHead[lo:hi] {
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
