package road

import (
	"slices"

	"ullage/geo/road/net"
	"ullage/geo/road/order"
)

// Limits of what is offered as another way. Source for the three criteria, and for ways through one more junction: I. Abraham,
// D. Delling, A. Goldberg, R. Werneck, "Alternative Routes in Road Networks", ACM J. Experimental Algorithmics 18, 2013: limited
// sharing (0.8), local optimality (0.25) and bounded stretch (0.25); the stretch is a little wider here.
const (
	mostShared  = 0.8
	localShare  = 0.25
	mostStretch = 1.3
	mostTried   = 100
)

// Alternatives returns the best way and up to n-1 others between two spots: ways that share at most four fifths of the cost
// and of the length of those before, cost at most 1.3 times the best, and are best in each quarter about the state that they are made
// through. Errors as [Query.Route]. Few may be found; the first is always the best. Cost some 0.2 µs a state of the network,
// and up to a hundred ways.
func (q *Query) Alternatives(from, to Spot, n int) ([]Path, error) {
	best, err := q.Route(from, to)
	if err != nil {
		return nil, err
	}
	paths := []Path{best}
	for _, state := range q.viaStates(from, to, best.Cost) {
		if len(paths) >= n {
			break
		}
		if v, ok := q.through(from, state, to); ok && q.isOther(v, paths, best.Cost) {
			q.r.sum(&v.Path)
			v.Path.Legs = []int{len(v.Path.Steps)}
			paths = append(paths, v.Path)
		}
	}
	return paths, nil
}

// A viaPath is the way through a state.
type viaPath struct {
	Path
	via int // the steps before the state
}

// viaStates lists states through which another way may go, the most promising first. The best ways from the start and those to
// the end have pieces in common, plateaus, on which both costs add up to the same: who goes through one drives all of it, and
// the longer it is, the less he would find a better way about it (Abraham et al., section 5). So states are grouped by that
// sum, and a long plateau makes up for a higher cost.
func (q *Query) viaStates(from, to Spot, best uint64) (list []uint32) {
	limit := uint64(min(mostStretch*float64(best), net.MaxCost))
	there, back := q.sweeps()
	there.everywhere(q.r.starts(from, nil), uint32(limit))
	back.everywhere(q.r.finals(to, nil), uint32(limit))
	var sums []uint64 // cost of the way through a state, and below it the state
	for v, a := range there.dist {
		if b := back.dist[v]; a != noWay && b != noWay && uint64(a)+uint64(b) <= limit {
			sums = append(sums, (uint64(a)+uint64(b))<<32|uint64(v))
		}
	}
	slices.Sort(sums)
	var keys []uint64 // what counts, less is better, and below it the state in the middle of a plateau
	for i, k := 0, 0; i < len(sums); i = k {
		for k = i; k < len(sums) && sums[k]>>32 == sums[i]>>32; k++ {
		}
		lo, hi := there.span(sums[i:k])
		if length := uint64(hi - lo); float64(length) >= leastPlateau*float64(best) && sums[i]>>32 > best {
			keys = append(keys, (limit+sums[i]>>32-length)<<32|uint64(there.middle(sums[i:k], uint64(lo)+uint64(hi))))
		}
	}
	slices.Sort(keys)
	for _, key := range keys[:min(len(keys), mostTried)] {
		list = append(list, uint32(key))
	}
	return list
}

// span returns the least and the greatest cost of reaching the states of a plateau, which are the lower halves of sums.
func (s *sweep) span(sums []uint64) (lo, hi uint32) {
	lo = noWay
	for _, x := range sums {
		d := s.dist[uint32(x)]
		lo, hi = min(lo, d), max(hi, d)
	}
	return lo, hi
}

// middle returns the state of a plateau whose doubled cost is nearest to a number.
func (s *sweep) middle(sums []uint64, twice uint64) (state uint32) {
	off := uint64(noWay)
	for _, x := range sums {
		d := 2 * uint64(s.dist[uint32(x)])
		if o := max(d, twice) - min(d, twice); o < off {
			state, off = uint32(x), o
		}
	}
	return state
}

// leastPlateau is the share of the best cost that a plateau must have: below it hardly any way passes the test of local
// optimality. Own choice.
const leastPlateau = localShare / 10

// through returns the best way between two spots through a state.
func (q *Query) through(from Spot, state uint32, to Spot) (v viaPath, ok bool) {
	r := q.r
	q.starts, q.finals = r.starts(from, q.starts[:0]), append(q.finals[:0], seed{state: state})
	_, top := q.meet(q.starts, q.finals, noWay)
	if top == order.None {
		return v, false
	}
	first := q.seedOf(q.starts, q.ahead, top)
	v.Steps = append(v.Steps, net.Step{Dir: first.dir, FromCm: from.Cm, ToCm: r.Net.EndCm(first.dir)})
	v.Steps = q.unpackFrom(top, q.unpackTo(top, v.Steps))
	v.via = len(v.Steps)
	q.starts, q.finals = append(q.starts[:0], seed{state: state}), r.finals(to, q.finals[:0])
	if _, top = q.meet(q.starts, q.finals, noWay); top == order.None {
		return v, false
	}
	v.Steps = q.unpackFrom(top, q.unpackTo(top, v.Steps))
	last := q.seedOf(q.finals, q.behind, top)
	v.Steps = append(v.Steps, net.Step{Dir: last.dir, FromCm: r.Net.StartCm(last.dir), ToCm: to.Cm})
	return v, true
}

// isOther checks the three criteria.
func (q *Query) isOther(v viaPath, paths []Path, best uint64) bool {
	// 1. No edge twice, and not too much of it in a way that is offered already.
	own := map[uint32]bool{}
	for _, s := range v.Steps {
		if own[s.Edge()] {
			return false
		}
		own[s.Edge()] = true
	}
	for _, p := range paths {
		var shared, sharedCm, cm uint64
		for _, s := range p.Steps {
			length := uint64(max(s.FromCm, s.ToCm) - min(s.FromCm, s.ToCm))
			if cm += length; own[s.Edge()] {
				shared += q.r.stepCost(s)
				sharedCm += length
			}
		}
		// Roads for guests count twenty-fold: other ways into the same lane would do by their cost alone.
		if float64(shared) > mostShared*float64(best) || float64(sharedCm) > mostShared*float64(cm) {
			return false
		}
	}
	// 2. Best about the via state.
	runs := q.runs(v.Steps, new(measure))
	if len(runs) != 1 || v.via >= len(runs[0]) {
		return false
	}
	run, reach := runs[0], uint64(localShare/2*float64(best))
	a, b := v.via, v.via
	for a > 0 && run[v.via].cost-run[a].cost < reach {
		a--
	}
	for b < len(run)-1 && run[b].cost-run[v.via].cost < reach {
		b++
	}
	return q.isBest(run[a], run[b])
}
