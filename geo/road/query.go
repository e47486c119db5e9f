package road

import (
	"errors"
	"slices"
)

// ErrNoWay says that the vehicle cannot get there on the roads that it may use.
var ErrNoWay = errors.New("road: no way there on roads that the vehicle may use")

// ErrNoRoad says that a position is not on a road.
var ErrNoRoad = errors.New("road: the position is not on a road")

// A Query is scratch memory for questions to a router: 16 bytes a state, and 18 more once detours were asked for. Not for two goroutines at once.
type Query struct {
	r      *Router
	ahead  reach // from the start
	behind reach // to the end
	chain  []uint32
	heads  []uint32
	starts []seed
	finals []seed
	there  *sweep // see detour.go; made when first asked for
	back   *sweep
}

// A reach is how far the states are that a search has seen. Only what it has seen differs from noWay.
type reach struct {
	dist []uint32
	prev []uint32 // the lower state from where it was reached; itself at a seed
}

func newReach(states int) reach {
	x := reach{make([]uint32, states), make([]uint32, states)}
	for i := range x.dist {
		x.dist[i] = noWay
	}
	return x
}

// put makes a state a seed.
func (x *reach) put(s, cost uint32) {
	if cost < x.dist[s] {
		x.dist[s], x.prev[s] = cost, s
	}
}

// Query returns new scratch memory. Cost O(states).
func (r *Router) Query() *Query {
	return &Query{r: r, ahead: newReach(len(r.Net.at)), behind: newReach(len(r.Net.at))}
}

// meet searches up the elimination tree from both sides and returns the least cost and the state where the sides meet; noWay
// if there is no way below limit. Every state that can matter is an ancestor of a seed, so the tree is climbed without a
// queue (Dibbelt, Strasser, Wagner 2016, section 8.2).
func (q *Query) meet(starts, finals []seed, limit uint32) (best, top uint32) {
	q.reset()
	h, r := &q.r.Net.cch, q.r
	q.heads = q.heads[:0]
	for _, s := range starts {
		q.ahead.put(s.state, s.cost)
		q.heads = append(q.heads, s.state)
	}
	for _, s := range finals {
		q.behind.put(s.state, s.cost)
		q.heads = append(q.heads, s.state)
	}
	best, top = limit, none
	for len(q.heads) > 0 {
		s := slices.Min(q.heads)
		q.chain = append(q.chain, s)
		there, back := q.ahead.dist[s], q.behind.dist[s]
		if there+back < best {
			best, top = there+back, s
		}
		lo, hi := h.upFirst[s], h.upFirst[s+1]
		if there < best {
			q.ahead.relax(s, there, h.upHead[lo:hi], r.up[lo:hi])
		}
		if back < best {
			q.behind.relax(s, back, h.upHead[lo:hi], r.down[lo:hi])
		}
		// Every head that stood here climbs on; heads that meet become one.
		parent := h.parent(s)
		kept := q.heads[:0]
		for _, x := range q.heads {
			if x != s && x != parent {
				kept = append(kept, x)
			}
		}
		if q.heads = kept; parent != none {
			q.heads = append(q.heads, parent)
		}
	}
	if top == none {
		return noWay, none
	}
	return best, top
}

func (x *reach) relax(s, d uint32, heads, costs []uint32) {
	costs = costs[:len(heads)]
	for i, t := range heads {
		if c := d + costs[i]; c < x.dist[t] {
			x.dist[t], x.prev[t] = c, s
		}
	}
}

func (q *Query) reset() {
	for _, s := range q.chain {
		q.ahead.dist[s], q.behind.dist[s] = noWay, noWay
	}
	q.chain = q.chain[:0]
}

// Cost returns the least cost between two spots, in milliseconds or centimetres by the router's aim; ok is false if there is
// no way. Cost a few hundred states.
func (q *Query) Cost(from, to Spot) (cost uint32, ok bool) {
	if !q.r.Net.holds(from) || !q.r.Net.holds(to) {
		return 0, false
	}
	straight, _ := q.r.along(from, to)
	q.starts, q.finals = q.r.starts(from, q.starts[:0]), q.r.finals(to, q.finals[:0])
	best, _ := q.meet(q.starts, q.finals, straight)
	cost = min(best, straight)
	return cost, cost != noWay
}

// leg appends the steps of the least way between two spots.
func (q *Query) leg(from, to Spot, steps []Step) ([]Step, error) {
	if !q.r.Net.holds(from) || !q.r.Net.holds(to) {
		return steps, ErrNoRoad
	}
	r := q.r
	straight, dir := r.along(from, to)
	q.starts, q.finals = r.starts(from, q.starts[:0]), r.finals(to, q.finals[:0])
	best, top := q.meet(q.starts, q.finals, straight)
	if best == noWay {
		if straight == noWay {
			return steps, ErrNoWay
		}
		return append(steps, Step{dir, from.Cm, to.Cm}), nil
	}
	first := q.seedOf(q.starts, q.ahead, top)
	steps = append(steps, Step{first.dir, from.Cm, r.Net.endCm(first.dir)})
	steps = q.unpackTo(top, steps)
	steps = q.unpackFrom(top, steps)
	last := q.seedOf(q.finals, q.behind, top)
	return append(steps, Step{last.dir, r.Net.startCm(last.dir), to.Cm}), nil
}

// seedOf follows a search back to where it began.
func (q *Query) seedOf(seeds []seed, x reach, s uint32) seed {
	for x.prev[s] != s {
		s = x.prev[s]
	}
	for _, d := range seeds {
		if d.state == s && d.cost == x.dist[s] {
			return d
		}
	}
	panic("road: a search without a seed")
}
