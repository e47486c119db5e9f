package road

import (
	"errors"

	"ullage/geo/road/net"
)

// ErrNoWay says that the vehicle cannot get there on the roads that it may use.
var ErrNoWay = errors.New("road: no way there on roads that the vehicle may use")

// ErrNoRoad says that a position is not on a road.
var ErrNoRoad = errors.New("road: the position is not on a road")

// A Path is a way on the network.
type Path struct {
	Steps   []net.Step
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

// leg appends the steps of the least way between two spots.
func (q *Query) leg(from, to Spot, steps []net.Step) ([]net.Step, error) {
	if !from.isOn(q.r.Net) || !to.isOn(q.r.Net) {
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
		return append(steps, net.Step{Dir: dir, FromCm: from.Cm, ToCm: to.Cm}), nil
	}
	first := q.seedOf(q.starts, q.ahead, top)
	steps = append(steps, net.Step{Dir: first.dir, FromCm: from.Cm, ToCm: r.Net.EndCm(first.dir)})
	steps = q.unpackTo(top, steps)
	steps = q.unpackFrom(top, steps)
	last := q.seedOf(q.finals, q.behind, top)
	return append(steps, net.Step{Dir: last.dir, FromCm: r.Net.StartCm(last.dir), ToCm: to.Cm}), nil
}

// PathOf returns the path of steps that follow each other, as those of a matched stretch, with its length and time.
func (r *Router) PathOf(steps []net.Step) Path {
	p := Path{Steps: steps, Legs: []int{len(steps)}}
	r.sum(&p)
	return p
}

// sum fills length, time and cost of a path.
func (r *Router) sum(p *Path) {
	var cm, ms, cost uint64
	for _, s := range p.Steps {
		cm += uint64(s.LengthCm())
		ms += r.stepMs(s)
		cost += r.stepCost(s)
	}
	p.LengthM, p.Seconds, p.Cost = float64(cm)/100, float64(ms)/1000, cost
}
