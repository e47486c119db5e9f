package byroad

import (
	"context"

	"github.com/paulmach/orb"

	"ullage/geo/road"
	"ullage/geo/road/net"
	"ullage/planner/trip"
)

// mostOthers is how many other ways are looked for: own choice.
const mostOthers = 3

// Others returns other ways of a vehicle between two points that are within withinM metres of a road, as far as there are any
// worth it, see [road.Query.Alternatives]. Each is two legs, that meet at a point on a road that only this way takes: who
// goes by way of that point drives it. By of the first says which road tells it from the ways before.
func (g *Guide) Others(ctx context.Context, v trip.Vehicle, pair [2]orb.Point, withinM float64) (list []Leg, err error) {
	if err := g.vehicle(ctx, v); err != nil {
		return nil, err
	}
	paths, err := g.ask.Alternatives(g.own.Snap(pair[0], withinM), g.own.Snap(pair[1], withinM), mostOthers+1)
	if err != nil {
		return nil, nil // no way is no other way
	}
	known := map[uint32]bool{} // edges of the ways before
	for i, p := range paths {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if i > 0 {
			list = append(list, g.over(p, known, pair, withinM)...)
		}
		for _, s := range p.Steps {
			known[s.Edge()] = true
		}
	}
	return list, nil
}

// over finds a point that makes a way the best by way of it; nil if none of a few does.
func (g *Guide) over(p road.Path, known map[uint32]bool, pair [2]orb.Point, withinM float64) []Leg {
	run, runM, by := g.apart(p.Steps, known)
	for _, share := range []float64{0.5, 0.3, 0.7} {
		m := share * runM
		for _, s := range run {
			step := g.own.PathOf([]net.Step{s})
			if m -= step.LengthM; m > 0 {
				continue
			}
			at := road.Spot{OK: true, Edge: s.Edge(), Cm: (s.FromCm + s.ToCm) / 2}.Point(g.network)
			c := g.ask.Through([]orb.Point{pair[0], at, pair[1]}, withinM)
			if len(c) == 2 && g.isAlong(p, c) {
				legs := []Leg{g.leg(c[0]), g.leg(c[1])}
				legs[0].By = by
				return legs
			}
			break
		}
	}
	return nil
}

// isAlong says that a course is the same way, but for a hundredth.
func (g *Guide) isAlong(p road.Path, c road.Course) bool {
	edges, m := map[uint32]bool{}, 0.0
	for _, s := range c {
		for _, step := range s.Steps {
			edges[step.Edge()] = true
		}
	}
	for i, s := range p.Steps {
		if edges[s.Edge()] {
			m += g.own.PathOf(p.Steps[i : i+1]).LengthM
		}
	}
	_, seconds := g.own.Measure(c)
	return m > 0.99*p.LengthM && seconds < 1.01*p.Seconds+1
}

// apart returns the longest piece of a way that is not of those before, with its length, and the road that is longest off them.
func (g *Guide) apart(steps []net.Step, known map[uint32]bool) (run []net.Step, runM float64, by string) {
	from, m := 0, 0.0
	named := map[string]float64{}
	for i, s := range steps {
		if known[s.Edge()] {
			from, m = i+1, 0
			continue
		}
		length := g.own.PathOf(steps[i : i+1]).LengthM
		if m += length; m > runM {
			run, runM = steps[from:i+1], m
		}
		if name := g.network.Road(s.Edge()).Name; name != "" {
			if named[name] += length; named[name] > named[by] {
				by = name
			}
		}
	}
	return run, runM, by
}
