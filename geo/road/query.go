package road

import (
	"slices"

	"ullage/geo/road/order"
)

// A Query is scratch memory for questions to a router: 16 bytes a state, and 18 more once detours were asked for. Not for two goroutines at once.
type Query struct {
	r      *Router
	ahead  reach // from the start
	behind reach // to the end
	chain  []uint32
	heads  []uint32
	starts []seed
	finals []seed
	there  *sweep // see [Query.sweeps]
	back   *sweep
}

// Query returns new scratch memory. Cost O(states).
func (r *Router) Query() *Query {
	return &Query{r: r, ahead: newReach(r.Net.States()), behind: newReach(r.Net.States())}
}

// Cost returns the least cost between two spots, in milliseconds or centimetres by the router's aim; ok is false if there is
// no way. Cost a few hundred states.
func (q *Query) Cost(from, to Spot) (cost uint32, ok bool) {
	if !from.isOn(q.r.Net) || !to.isOn(q.r.Net) {
		return 0, false
	}
	straight, _ := q.r.along(from, to)
	q.starts, q.finals = q.r.starts(from, q.starts[:0]), q.r.finals(to, q.finals[:0])
	best, _ := q.meet(q.starts, q.finals, straight)
	cost = min(best, straight)
	return cost, cost != noWay
}

// meet searches up the elimination tree from both sides and returns the least cost and the state where the sides meet; noWay
// if there is no way below limit. Every state that can matter is an ancestor of a seed, so the tree is climbed without a
// queue (Dibbelt, Strasser, Wagner 2016, section 8.2).
func (q *Query) meet(starts, finals []seed, limit uint32) (best, top uint32) {
	q.reset()
	h, r := q.r.Net.Hierarchy(), q.r
	q.heads = q.heads[:0]
	for _, s := range starts {
		q.ahead.put(s.state, s.cost)
		q.heads = append(q.heads, s.state)
	}
	for _, s := range finals {
		q.behind.put(s.state, s.cost)
		q.heads = append(q.heads, s.state)
	}
	best, top = limit, order.None
	for len(q.heads) > 0 {
		s := slices.Min(q.heads)
		q.chain = append(q.chain, s)
		there, back := q.ahead.dist[s], q.behind.dist[s]
		if there+back < best {
			best, top = there+back, s
		}
		lo, hi := h.UpFirst[s], h.UpFirst[s+1]
		if there < best {
			q.ahead.relax(s, there, h.UpHead[lo:hi], r.up[lo:hi])
		}
		if back < best {
			q.behind.relax(s, back, h.UpHead[lo:hi], r.down[lo:hi])
		}
		// Every head that stood here climbs on; heads that meet become one.
		parent := h.Parent(s)
		kept := q.heads[:0]
		for _, x := range q.heads {
			if x != s && x != parent {
				kept = append(kept, x)
			}
		}
		if q.heads = kept; parent != order.None {
			q.heads = append(q.heads, parent)
		}
	}
	if top == order.None {
		return noWay, order.None
	}
	return best, top
}

func (q *Query) reset() {
	for _, s := range q.chain {
		q.ahead.dist[s], q.behind.dist[s] = noWay, noWay
	}
	q.chain = q.chain[:0]
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

// sweeps returns scratch memory for searches from many states and back to them, made when first asked for.
func (q *Query) sweeps() (there, back *sweep) {
	if q.there == nil {
		q.there, q.back = newSweep(q.r, ahead), newSweep(q.r, behind)
	}
	return q.there, q.back
}
