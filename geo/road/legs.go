package road

import (
	"ullage/geo/road/net"
	"ullage/geo/road/order"
)

// A station is a position on a course where it can be left and joined: a state, or a spot in the middle of an edge.
type station struct {
	state   uint32 // none if it is a spot
	spot    Spot
	cost    uint64 // from the beginning of its leg
	measure        // from the beginning of the course
}

// legs cuts a course into pieces on roads that are each a best way: so a detour never leaves out what was drawn on purpose.
// Pieces of a best way are best ways, so the greatest piece is found by doubling and halving.
func (q *Query) legs(c Course) (legs [][]station) {
	var at measure
	for _, s := range c {
		if len(s.Steps) == 0 {
			m := net.LineM(s.Drawn)
			at = at.add(measure{uint64(m * 100), uint64(m * 100 * msPerCm(drawnKmh))})
			continue
		}
		for _, run := range q.runs(s.Steps, &at) {
			legs = append(legs, q.bestPieces(run)...)
		}
	}
	return legs
}

// runs lists the stations of steps that follow each other on roads open to the vehicle. The course is measured up to at, which
// goes on to the end of the steps.
func (q *Query) runs(steps []net.Step, at *measure) (runs [][]station) {
	r, n := q.r, q.r.Net
	var run []station
	var cost uint64
	state := order.None
	flush := func() {
		if len(run) > 1 {
			runs = append(runs, run)
		}
		run, cost = nil, 0
	}
	spotAt := func(s net.Step, cm uint32) Spot { return Spot{OK: true, Edge: s.Edge(), Cm: cm} }
	for _, s := range steps {
		open := r.cost[s.Dir] != noWay
		if open && len(run) > 0 && s.FromCm != n.StartCm(s.Dir) {
			flush() // a turn in the middle of an edge, at a via point
		}
		if open && len(run) == 0 {
			run = []station{{state: order.None, spot: spotAt(s, s.FromCm), measure: *at}}
		}
		*at = at.add(r.measureOf(s))
		if !open {
			flush()
			continue
		}
		cost += r.stepCost(s)
		if s.ToCm == n.EndCm(s.Dir) {
			if len(run) == 1 {
				state, _ = n.Arrival(s.Dir)
			} else {
				state, _ = n.After(state, s.Dir)
			}
			run = append(run, station{state, Spot{}, cost, *at})
			continue
		}
		run = append(run, station{order.None, spotAt(s, s.ToCm), cost, *at})
		flush()
	}
	flush()
	return runs
}

func (q *Query) bestPieces(run []station) (legs [][]station) {
	for from := 0; from < len(run)-1; {
		best := func(to int) bool { return q.isBest(run[from], run[to]) }
		// 1. Double while it holds; 2. halve.
		good, step := from+1, 1
		for good < len(run)-1 && best(min(good+step, len(run)-1)) {
			good = min(good+step, len(run)-1)
			step *= 2
		}
		for bad := min(good+step, len(run)); bad-good > 1; {
			if m := (good + bad) / 2; best(m) {
				good = m
			} else {
				bad = m
			}
		}
		leg := append([]station(nil), run[from:good+1]...)
		for i := len(leg) - 1; i >= 0; i-- {
			leg[i].cost -= leg[0].cost
		}
		legs = append(legs, leg)
		from = good
	}
	return legs
}

// isBest says that no way between two stations costs less than the course.
func (q *Query) isBest(a, b station) bool {
	limit := uint32(min(b.cost-a.cost, net.MaxCost))
	q.starts, q.finals = q.leaving(a, q.starts[:0]), q.joining(b, q.finals[:0])
	cost, _ := q.meet(q.starts, q.finals, limit)
	return cost == noWay
}

// leaving lists the states reached from a station, joining those from which it is reached.
func (q *Query) leaving(s station, list []seed) []seed {
	if s.state != order.None {
		return append(list, seed{state: s.state})
	}
	return q.r.starts(s.spot, list)
}

func (q *Query) joining(s station, list []seed) []seed {
	if s.state != order.None {
		return append(list, seed{state: s.state})
	}
	return q.r.finals(s.spot, list)
}
