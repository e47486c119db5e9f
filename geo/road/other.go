package road

import "slices"

// Limits of what is offered as another way. Source for the three criteria: I. Abraham, D. Delling, A. Goldberg, R. Werneck,
// "Alternative Routes in Road Networks", ACM J. Experimental Algorithmics 18, 2013: limited sharing (0.8), local optimality
// (0.25) and bounded stretch (0.25); the stretch is a little wider here.
const (
	mostShared  = 0.8
	localShare  = 0.25
	mostStretch = 1.3
	mostTried   = 60
)

// Alternatives returns the best way and up to n-1 others between two spots: ways that share at most four fifths of their cost
// with those before, cost at most 1.3 times the best, and are best in each quarter about the state that they are made
// through. Errors as [Query.Route]. Few may be found; the first is always the best. Cost some milliseconds.
func (q *Query) Alternatives(from, to Spot, n int) ([]Path, error) {
	best, err := q.Route(from, to)
	if err != nil {
		return nil, err
	}
	paths := []Path{best}
	for _, v := range q.viaPaths(from, to, best.Cost) {
		if len(paths) >= n {
			break
		}
		if q.isOther(v, paths, best.Cost) {
			q.r.sum(&v.Path)
			v.Path.Legs = []int{len(v.Path.Steps)}
			paths = append(paths, v.Path)
		}
	}
	return paths, nil
}

// A viaPath is the way through a state where both searches meet.
type viaPath struct {
	Path
	via int // the steps before the state
}

// viaPaths lists ways through states that both searches see, least cost first.
func (q *Query) viaPaths(from, to Spot, best uint64) (list []viaPath) {
	r := q.r
	limit := uint32(min(mostStretch*float64(best), maxCost))
	q.starts, q.finals = r.starts(from, q.starts[:0]), r.finals(to, q.finals[:0])
	q.reset()
	for _, s := range q.starts {
		q.ahead.put(s.state, s.cost)
	}
	for _, s := range q.finals {
		q.behind.put(s.state, s.cost)
	}
	h := &r.Net.cch
	// All ancestors, ascending, both ways.
	var chain []uint32
	for _, s := range slices.Concat(q.starts, q.finals) {
		for v := s.state; v != none; v = h.parent(v) {
			chain = append(chain, v)
		}
	}
	slices.Sort(chain)
	q.chain = append(q.chain, slices.Compact(chain)...)
	var met []uint64 // cost, and below it the state, higher ones first
	for _, v := range q.chain {
		a, b := q.ahead.dist[v], q.behind.dist[v]
		lo, hi := h.upFirst[v], h.upFirst[v+1]
		if a < limit {
			q.ahead.relax(v, a, h.upHead[lo:hi], r.up[lo:hi])
		}
		if b < limit {
			q.behind.relax(v, b, h.upHead[lo:hi], r.down[lo:hi])
		}
		if uint64(a)+uint64(b) <= uint64(limit) && a != noWay && b != noWay {
			met = append(met, uint64(a+b)<<32|uint64(^v))
		}
	}
	slices.Sort(met)
	lastCost := uint32(0)
	for _, key := range met {
		m := seed{state: ^uint32(key), cost: uint32(key >> 32)}
		if m.cost == lastCost {
			continue // the same way, most often
		}
		if lastCost = m.cost; len(list) >= mostTried {
			break
		}
		first, last := q.seedOf(q.starts, q.ahead, m.state), q.seedOf(q.finals, q.behind, m.state)
		v := viaPath{Path: Path{Steps: []Step{{first.dir, from.Cm, r.Net.endCm(first.dir)}}}}
		v.Steps = q.unpackTo(m.state, v.Steps)
		v.via = len(v.Steps)
		v.Steps = append(q.unpackFrom(m.state, v.Steps), Step{last.dir, r.Net.startCm(last.dir), to.Cm})
		list = append(list, v)
	}
	return list
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
		shared := uint64(0)
		for _, s := range p.Steps {
			if own[s.Edge()] {
				shared += q.r.stepCost(s)
			}
		}
		if float64(shared) > mostShared*float64(best) {
			return false
		}
	}
	// 2. Best about the via state.
	var cm, ms uint64
	runs := q.runs(v.Steps, &cm, &ms)
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
