package road

import (
	"context"
	"errors"
	"math"

	"github.com/paulmach/orb"

	"ullage/geo/road/net"
)

// MatchOptions say how a track is put on roads. The zero value suits a recorded track.
type MatchOptions struct {
	SigmaM  float64 // spread of the track's points about the road; 0: 10
	RadiusM float64 // a point farther than this from every road is off the network; 0: 50
}

// ErrAim says that a question needs a router for the shortest way.
var ErrAim = errors.New("road: matching a track needs a router for the shortest way")

const (
	mostCandidates = 6    // roads looked at for a point
	leastBetaM     = 10   // see transition
	betaShare      = 0.15 //
	slackM         = 2000 // Newson and Krumm: no way that is this much longer than straight
)

// Match puts a track on roads: the most likely sequence of positions by a hidden Markov model (P. Newson, J. Krumm, "Hidden
// Markov Map Matching Through Noise and Sparseness", ACM GIS 2009). The probability of a point falls with its distance from
// the road as a normal distribution, that of a step with the difference between the way over roads and the straight line.
// Deviates as follows: the spread of that difference grows with the step (0.15 of it, at least 10 m) instead of being one
// number for one rate of recording; points are taken at least two sigma apart, as there.
//
// What is far from every road, or cannot follow the point before, is kept as drawn: a stretch with Drawn. The track's points
// should be in order; a track without two points gives an empty course. Roads that the router's vehicle may not use are not
// matched: take a router without limits to match a track that was driven. Cost about 0.1 ms a point.
func (q *Query) Match(ctx context.Context, track orb.LineString, opt MatchOptions) (Course, error) {
	if q.r.Aim != Shortest {
		return nil, ErrAim
	}
	if opt.SigmaM <= 0 {
		opt.SigmaM = 10
	}
	if opt.RadiusM <= 0 {
		opt.RadiusM = 50
	}
	m := &matcher{q: q, opt: opt, track: track}
	m.thin()
	for i := range m.points {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		m.next(i)
	}
	m.finish(len(m.points))
	return m.course(), nil
}

// A matcher goes along the points of a track.
type matcher struct {
	q      *Query
	opt    MatchOptions
	track  orb.LineString
	points []int // those of the track that are looked at
	layers []layer
	first  int // the layer where the present chain began
	chosen []chosen
}

// A layer is a point with the roads near it.
type layer struct {
	spots []Spot
	score []float64 // logarithm of the probability of the best sequence up to here
	from  []int     // its place in the layer before; -1 at the start of a chain
}

// chosen is the position of a point on a road; off the network if not OK, start if no way leads from the one before.
type chosen struct {
	Spot
	start bool
}

func (m *matcher) thin() {
	for i, p := range m.track {
		if n := len(m.points); n > 0 && i < len(m.track)-1 && net.QuickM(m.track[m.points[n-1]], p) < 2*m.opt.SigmaM {
			continue
		}
		m.points = append(m.points, i)
	}
}

// next adds the layer of a point.
func (m *matcher) next(i int) {
	p := m.track[m.points[i]]
	spots := nearest(m.q.r.near(p, m.opt.RadiusM), mostCandidates)
	l := layer{spots: spots, score: make([]float64, len(spots)), from: make([]int, len(spots))}
	linked := false
	if i > m.first && len(spots) > 0 {
		linked = m.link(&l, m.layers[i-1], net.QuickM(m.track[m.points[i-1]], p))
	}
	if !linked {
		m.finish(i)
		m.first = i
		for k := range spots {
			l.from[k], l.score[k] = -1, 0
		}
	}
	for k, s := range spots {
		l.score[k] -= 0.5 * (s.OffM / m.opt.SigmaM) * (s.OffM / m.opt.SigmaM)
	}
	m.layers = append(m.layers, l)
}

// nearest moves the n nearest spots to the front and returns them.
func nearest(spots []Spot, n int) []Spot {
	n = min(n, len(spots))
	for i := range n {
		for k := i + 1; k < len(spots); k++ {
			if spots[k].OffM < spots[i].OffM {
				spots[i], spots[k] = spots[k], spots[i]
			}
		}
	}
	return spots[:n]
}

// link finds for each spot the best one before; false if none can be reached.
func (m *matcher) link(l *layer, before layer, straightM float64) (any bool) {
	beta := max(leastBetaM, betaShare*straightM)
	for k, to := range l.spots {
		l.score[k], l.from[k] = math.Inf(-1), -1
		for b, from := range before.spots {
			if math.IsInf(before.score[b], -1) {
				continue
			}
			way, ok := m.q.costBelow(from, to, uint32(min(net.MaxCost, 100*(straightM+slackM))))
			if !ok {
				continue
			}
			s := before.score[b] - math.Abs(float64(way)/100-straightM)/beta
			if s > l.score[k] {
				l.score[k], l.from[k], any = s, b, true
			}
		}
	}
	return any
}

// finish chooses the best sequence of the chain that ends before a point.
func (m *matcher) finish(end int) {
	if end <= m.first {
		return
	}
	list := make([]chosen, end-m.first)
	best := -1
	last := m.layers[end-1]
	for k := range last.spots {
		if best < 0 || last.score[k] > last.score[best] {
			best = k
		}
	}
	for i := end - 1; i >= m.first && best >= 0; i-- {
		list[i-m.first] = chosen{Spot: m.layers[i].spots[best]}
		best = m.layers[i].from[best]
	}
	list[0].start = true
	m.chosen = append(m.chosen, list...)
}

// costBelow is [Query.Cost] for ways that cost less than a limit.
func (q *Query) costBelow(from, to Spot, limit uint32) (uint32, bool) {
	straight, _ := q.r.along(from, to)
	q.starts, q.finals = q.r.starts(from, q.starts[:0]), q.r.finals(to, q.finals[:0])
	best, _ := q.meet(q.starts, q.finals, min(straight, limit))
	best = min(best, straight)
	return best, best < limit
}

// course joins what was chosen with the ways between, and what was not with the track.
func (m *matcher) course() (c Course) {
	var steps []net.Step
	flush := func() {
		if len(steps) > 0 {
			c = append(c, Stretch{Steps: steps})
		}
		steps = nil
	}
	for i := 1; i < len(m.chosen); i++ {
		from, to := m.chosen[i-1], m.chosen[i]
		if from.OK && to.OK && !to.start {
			if more, err := m.q.leg(from.Spot, to.Spot, nil); err == nil {
				for _, s := range more {
					steps = m.follow(steps, s)
				}
				continue
			}
		}
		// Go on to the next point on a road, or the end.
		first := i - 1
		for i < len(m.chosen)-1 && !m.chosen[i].OK {
			i++
		}
		flush()
		if ls := m.drawn(first, i); len(ls) > 1 {
			c = append(c, Stretch{Drawn: ls})
		}
	}
	flush()
	return c
}

// drawn is the track from one of the points looked at to another, with their positions on roads instead if they have one.
func (m *matcher) drawn(first, last int) (ls orb.LineString) {
	from, to := m.chosen[first], m.chosen[last]
	a, b := m.points[first], m.points[last]
	if from.OK {
		ls = append(ls, from.Spot.Point(m.q.r.Net))
		a++
	}
	if to.OK {
		b--
	}
	for k := a; k <= b; k++ {
		ls = append(ls, m.track[k])
	}
	if to.OK {
		ls = append(ls, to.Spot.Point(m.q.r.Net))
	}
	return ls
}

// follow appends a step, joining it to the one before on the same edge. A short way back, which is noise and not a turn, is
// taken away.
func (m *matcher) follow(steps []net.Step, s net.Step) []net.Step {
	if s.FromCm == s.ToCm {
		return steps
	}
	if len(steps) == 0 {
		return append(steps, s)
	}
	last := &steps[len(steps)-1]
	switch {
	case last.Dir == s.Dir && last.ToCm == s.FromCm:
		last.ToCm = s.ToCm
	case last.Dir == s.Dir^1 && last.ToCm == s.FromCm && float64(s.LengthCm()) < 400*m.opt.SigmaM && s.LengthCm() < last.LengthCm():
		last.ToCm = s.ToCm
	default:
		return append(steps, s)
	}
	return steps
}
