package byroad

import (
	"context"

	"github.com/paulmach/orb"

	"ullage/geo/road"
	"ullage/geo/road/net"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// A Leg is the way between two points of a route.
type Leg struct {
	Line    orb.LineString
	Drawn   bool // no road is known: straight, as drawn
	M, S    float64
	Avoided []fact.Fact // roads that a car or the track would take and this vehicle may not, and why: [RoadBarred]
	Closed  []fact.Fact // such roads that the leg takes all the same, as no way round is known
	By      string      // of another way: the road that tells it from those before
}

// Follow returns the way of a vehicle for each pair of points. Where one of
// them is farther than withinM metres from every road, or no way leads from one to the other, it is
// straight.
func (g *Guide) Follow(ctx context.Context, v trip.Vehicle, pairs [][2]orb.Point, withinM float64) ([]Leg, error) {
	if err := g.vehicle(ctx, v); err != nil {
		return nil, err
	}
	out := make([]Leg, len(pairs))
	for i, p := range pairs {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		for _, s := range g.ask.Through(p[:], withinM) {
			out[i] = g.leg(s)
		}
		for _, s := range g.any.Through(p[:], withinM) {
			out[i].Avoided = append(out[i].Avoided, g.avoided(s.Steps)...)
		}
	}
	return out, nil
}

// Match puts a track on roads, led round those that the vehicle may not use; where no road is near, it stays as it is.
func (g *Guide) Match(ctx context.Context, v trip.Vehicle, track orb.LineString) ([]Leg, error) {
	if err := g.vehicle(ctx, v); err != nil {
		return nil, err
	}
	if err := g.match(ctx, track); err != nil {
		return nil, err
	}
	out := make([]Leg, len(g.course))
	for i, s := range g.course {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		way, gone := g.ask.Around(s.Steps)
		if len(gone) > 0 {
			s.Steps = way
		}
		out[i] = g.leg(s)
		out[i].Avoided, out[i].Closed = g.avoided(gone), g.avoided(s.Steps)
	}
	return out, nil
}

// avoided says which of the steps the vehicle may not drive, each road once.
func (g *Guide) avoided(steps []net.Step) (list []fact.Fact) {
	for _, n := range g.own.Avoided(g.own.PathOf(steps)) {
		if f := roadBarred(n); !fact.Contains(list, f) {
			list = append(list, f)
		}
	}
	return list
}

func (g *Guide) leg(s road.Stretch) Leg {
	l := Leg{Line: s.Line(g.network), Drawn: len(s.Steps) == 0}
	l.M, l.S = g.own.Measure(road.Course{s})
	return l
}
