package road

import (
	"math"

	"github.com/paulmach/orb"
)

// A Step is a piece of road driven in one direction: Dir is edge<<1, plus 1 against the edge.
type Step struct {
	Dir          uint32
	FromCm, ToCm uint32 // positions on the edge
}

// Edge returns the edge of the step.
func (s Step) Edge() uint32 { return s.Dir >> 1 }

// cm is the length of a step.
func (s Step) cm() uint32 { return max(s.FromCm, s.ToCm) - min(s.FromCm, s.ToCm) }

// A Path is a way on the network.
type Path struct {
	Steps   []Step
	Legs    []int // Legs[i] is the number of steps up to the end of leg i: where via point i+1 is reached
	LengthM float64
	Seconds float64
	Cost    uint64 // what was made least: milliseconds or centimetres, roads for guests counted more
}

// Route returns the best way through spots in order. At a via point the vehicle may turn. Errors: fewer than two spots,
// [ErrNoRoad], [ErrNoWay]. Cost about 0.1 ms a leg and 1 µs an edge.
func (q *Query) Route(spots ...Spot) (Path, error) {
	if len(spots) < 2 {
		return Path{}, ErrNoRoad
	}
	var p Path
	for i := 1; i < len(spots); i++ {
		var err error
		if p.Steps, err = q.leg(spots[i-1], spots[i], p.Steps); err != nil {
			return Path{}, err
		}
		p.Legs = append(p.Legs, len(p.Steps))
	}
	q.r.sum(&p)
	return p, nil
}

// sum fills length, time and cost of a path.
func (r *Router) sum(p *Path) {
	var cm, ms, cost uint64
	for _, s := range p.Steps {
		cm += uint64(s.cm())
		ms += r.stepMs(s)
		cost += r.stepCost(s)
	}
	p.LengthM, p.Seconds, p.Cost = float64(cm)/100, float64(ms)/1000, cost
}

func (r *Router) stepCost(s Step) uint64 {
	return share(r.cost[s.Dir], s, r.Net.cm[s.Edge()])
}

// share is the part of a whole edge's number that a step has: exact, so that the parts of an edge add up.
func share(whole uint32, s Step, cm uint32) uint64 {
	a, b := uint64(whole)*uint64(s.FromCm)/uint64(cm), uint64(whole)*uint64(s.ToCm)/uint64(cm)
	return max(a, b) - min(a, b)
}

func (r *Router) stepMs(s Step) uint64 {
	return share(r.ms(s.Dir), s, r.Net.cm[s.Edge()])
}

// ms is the time for a whole direction.
func (r *Router) ms(dir uint32) uint32 {
	e := dir >> 1
	road := &r.Net.roads[r.Net.road[e]]
	if r.Aim == Fastest && road.Access[dir&1] == Open && r.cost[dir] != noWay {
		return r.cost[dir]
	}
	return uint32(min(max(1, math.Round(msPerCm(r.Vehicle.Kmh(road, int(dir&1)))*float64(r.Net.cm[e]))), maxCost-1))
}

// Line returns the line of a path, without repeated points.
func (n *Network) Line(p Path) orb.LineString {
	var ls orb.LineString
	for _, s := range p.Steps {
		for _, pt := range n.stepPoints(s) {
			if len(ls) == 0 || ls[len(ls)-1] != pt {
				ls = append(ls, pt)
			}
		}
	}
	return ls
}

// stepPoints returns the line of a step in the direction driven.
func (n *Network) stepPoints(s Step) orb.LineString {
	list := n.points(s.Edge())
	lo, hi := min(s.FromCm, s.ToCm), max(s.FromCm, s.ToCm)
	ls := lineOf(list)
	if lo > 0 || hi < n.cm[s.Edge()] {
		ls = n.between(ls, lo, hi, n.cm[s.Edge()])
	}
	if s.Dir&1 == 1 {
		ls.Reverse()
	}
	return ls
}

// between cuts a line that is an edge of whole centimetres.
func (n *Network) between(ls orb.LineString, lo, hi, whole uint32) orb.LineString {
	total := 0.0
	for i := 1; i < len(ls); i++ {
		total += quickM(ls[i-1], ls[i])
	}
	a, b := total*float64(lo)/float64(whole), total*float64(hi)/float64(whole)
	out := orb.LineString{pointAt(ls, a)}
	run := 0.0
	for i := 1; i < len(ls)-1; i++ {
		run += quickM(ls[i-1], ls[i])
		if run > a && run < b {
			out = append(out, ls[i])
		}
	}
	return append(out, pointAt(ls, b))
}

// At returns where a spot is.
func (n *Network) At(s Spot) orb.Point {
	ls := lineOf(n.points(s.Edge))
	return n.between(ls, s.Cm, s.Cm, n.cm[s.Edge])[0]
}

func pointAt(ls orb.LineString, m float64) orb.Point {
	for i := 1; i < len(ls); i++ {
		d := quickM(ls[i-1], ls[i])
		if m <= d && d > 0 {
			t := m / d
			return orb.Point{ls[i-1][0] + t*(ls[i][0]-ls[i-1][0]), ls[i-1][1] + t*(ls[i][1]-ls[i-1][1])}
		}
		m -= d
	}
	return ls[len(ls)-1]
}

// quickM is a flat distance, for shares of a line only: 111,195 m a degree on a sphere of 6,371 km.
func quickM(a, b orb.Point) float64 {
	k := math.Cos((a[1] + b[1]) / 2 * math.Pi / 180)
	return 111195 * math.Hypot((a[0]-b[0])*k, a[1]-b[1])
}
