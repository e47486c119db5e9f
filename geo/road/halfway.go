package road

import (
	"ullage/geo/road/net"
	"ullage/geo/road/order"
)

// A side is one half of the detours from a leg: ahead the search from all of its stations at once to all places, behind the one
// against the driving.
type side struct {
	heading
	*sweep
	q     *Query
	leg   []station
	begun map[uint32]int // state → the station from which the search sets out there
	on    map[uint32]tie
	known *measures
}

// A tie is a state of a leg: the number of its station and what driving there along the leg costs.
type tie struct {
	station int
	cost    uint32
}

// A halfway is the way from a station to a place, or back.
type halfway struct {
	station int
	cost    uint32
	measure
}

// newSide sets out from all stations of a leg.
func (q *Query) newSide(h heading, leg []station, known *measures) *side {
	there, back := q.sweeps()
	d := &side{heading: h, sweep: there, q: q, leg: leg, begun: map[uint32]int{}, on: make(map[uint32]tie, len(leg)), known: known}
	if h == behind {
		d.sweep = back
	}
	d.reset()
	for i, s := range leg {
		t := uint32(d.costAlong(s))
		for _, x := range d.outOf(s) {
			if c := min(t+x.cost, noWay); c < d.dist[x.state] {
				d.put(x.state, c)
				d.begun[x.state] = i
			}
		}
		if s.state != order.None {
			d.on[s.state] = tie{i, t}
		}
	}
	return d
}

// costAlong is what the leg costs up to a station, or behind from there on.
func (d *side) costAlong(s station) uint64 {
	if d.heading == ahead {
		return min(s.cost, net.MaxCost)
	}
	return min(d.leg[len(d.leg)-1].cost, net.MaxCost) - min(s.cost, net.MaxCost)
}

// outOf lists the states where a search that sets out from a station begins, endsOf those from which it enters a place's edge.
func (d *side) outOf(s station) []seed {
	if d.heading == ahead {
		return d.q.leaving(s, d.q.starts[:0])
	}
	return d.q.joining(s, d.q.finals[:0])
}

func (d *side) endsOf(p Spot) []seed {
	if d.heading == ahead {
		return d.r.finals(p, d.q.finals[:0])
	}
	return d.r.starts(p, d.q.starts[:0])
}

// search looks for all places whose numbers are listed.
func (d *side) search(places []Spot, near []int) {
	var targets []uint32
	for _, i := range near {
		for _, x := range d.endsOf(places[i]) {
			targets = append(targets, x.state)
		}
	}
	d.run(targets)
}

// way returns the way to a place that was searched, or behind from it.
func (d *side) way(p Spot) (h halfway, ok bool) {
	h = d.straight(p)
	best, state := seed{}, order.None
	for _, x := range d.endsOf(p) {
		if c := d.dist[x.state]; c != noWay && uint64(c)+uint64(x.cost) < uint64(h.cost) {
			h.cost, best, state = c+x.cost, x, x.state
		}
	}
	if state == order.None {
		return h, h.cost != noWay
	}
	h.measure = d.r.measureOf(d.piece(d.r.Net, best.dir, p.Cm))
	d.follow(state, &h)
	return h, true
}

// straight is the way along the edge from or to an end of the leg that lies on it; without one its cost is noWay.
func (d *side) straight(p Spot) halfway {
	h := halfway{cost: noWay}
	for _, i := range [...]int{0, len(d.leg) - 1} {
		s := d.leg[i]
		if s.state != order.None {
			continue
		}
		from, to := s.spot, p
		if d.heading == behind {
			from, to = p, s.spot
		}
		before := d.costAlong(s)
		if c, dir := d.r.along(from, to); c != noWay && uint64(c)+before < uint64(h.cost) {
			h = halfway{i, c + uint32(before), d.r.measureOf(net.Step{Dir: dir, FromCm: from.Cm, ToCm: to.Cm})}
		}
	}
	return h
}

// follow goes back from a state to the leg: it adds the measure of the way and finds the station.
func (d *side) follow(state uint32, h *halfway) {
	for {
		if i, ok := d.tie(state, d.dist[state]); ok {
			h.station = i
			return
		}
		before := d.prev[state]
		if before == state {
			break
		}
		before &^= fromAbove
		if _, ok := d.tie(before, d.dist[before]); ok {
			i, rest := d.latest(before, state, d.dist[before])
			h.station, h.measure = i, h.measure.add(rest)
			return
		}
		h.measure = h.measure.add(d.known.of(d.driven(before, state)))
		state = before
	}
	h.station = d.begun[state]
	if s := d.leg[h.station]; s.state == order.None {
		h.measure = h.measure.add(d.pieceTo(s, state))
	}
}

// tie returns the station of a state if driving there along the leg costs the same.
func (d *side) tie(state, cost uint32) (station int, ok bool) {
	t, ok := d.on[state]
	return t.station, ok && t.cost == cost
}

// pieceTo is the measure of the piece of an edge between a station in its middle and a state at its end.
func (d *side) pieceTo(s station, state uint32) measure {
	piece, least := net.Step{}, uint32(noWay)
	for _, x := range d.outOf(s) {
		if x.state == state && x.cost < least {
			piece, least = d.other().piece(d.r.Net, x.dir, s.spot.Cm), x.cost
		}
	}
	return d.r.measureOf(piece)
}

// latest returns the last station on the way from a to b, which is a shortcut, where driving on along the leg has cost as much,
// and the measure from there to b. So the leg is left as late as can be, and joined as early. a is such a station, reached at
// a cost of at.
func (d *side) latest(a, b, at uint32) (i int, rest measure) {
	r := d.r
	if i, ok := d.tie(b, at+r.neighbourCost(d.driven(a, b))); ok {
		return i, measure{}
	}
	dir, mid := r.halves(d.driven(a, b))
	if mid == order.None {
		i, _ := d.tie(a, at)
		return i, r.measureOf(r.Net.Whole(dir))
	}
	half := at + r.neighbourCost(d.driven(a, mid))
	if _, ok := d.tie(mid, half); ok {
		return d.latest(mid, b, half)
	}
	i, rest = d.latest(a, mid, at)
	return i, rest.add(d.known.of(d.driven(mid, b)))
}
