package byroad

import (
	"context"

	"github.com/paulmach/orb"

	"ullage/geo/road"
	"ullage/geo/road/net"
	"ullage/planner/trip"
)

// A Guide answers for a network. It remembers the last vehicle and the last
// route, so that another plan of the same trip costs little. For one
// goroutine at a time.
type Guide struct {
	network *net.Network
	car     *road.Router // fits everywhere
	ferries bool         // there are some
	track   *road.Query  // of a vehicle that fits everywhere, by the shortest way: what was driven is matched

	own      *road.Router // of the vehicle asked for last
	ask, any *road.Query  // of own and of car
	line     orb.LineString
	course   road.Course // of line
}

// New prepares a network for questions. Cost and memory of two routers:
// about 2 µs and 25 bytes per state. The vehicle asked for adds a third.
func New(ctx context.Context, network *net.Network) (*Guide, error) {
	car, err := road.NewRouter(ctx, network, net.Vehicle{TopKmh: net.MotorhomeTopKmh, Factor: net.MotorhomeFactor}, road.Fastest)
	if err != nil {
		return nil, err
	}
	short, err := road.NewRouter(ctx, network, net.Vehicle{}, road.Shortest)
	if err != nil {
		return nil, err
	}
	return &Guide{network: network, car: car, track: short.Query(), any: car.Query(), ferries: hasFerries(network)}, nil
}

// Fits returns what a road must take of a trip's vehicle.
func Fits(v trip.Vehicle) net.Vehicle {
	return net.Vehicle{HeightM: v.HeightM, WidthM: v.WidthM, LengthM: v.LengthM, MassT: v.MassKg / 1000,
		MarginM: net.DefaultMarginM, TopKmh: min(net.MotorhomeTopKmh, v.TopKmh()), Factor: net.MotorhomeFactor}
}

// vehicle makes the router of a vehicle, unless it is the one of before.
func (g *Guide) vehicle(ctx context.Context, v trip.Vehicle) error {
	fits := Fits(v)
	if g.own != nil && g.own.Vehicle == fits {
		return nil
	}
	own, err := road.NewRouter(ctx, g.network, fits, road.Fastest)
	if err != nil {
		return err
	}
	g.own, g.ask = own, own.Query()
	return nil
}

// match puts a route on roads, unless it is the one of before.
func (g *Guide) match(ctx context.Context, line orb.LineString) error {
	if g.course != nil && g.line.Equal(line) {
		return nil
	}
	c, err := g.track.Match(ctx, line, road.MatchOptions{})
	if err != nil {
		return err
	}
	g.line, g.course = line.Clone(), c
	return nil
}

// atSea says that a step is on a ferry.
func (g *Guide) atSea(s net.Step) bool { return g.network.Road(s.Edge()).Class == net.Ferry }

// hasFerries says that some edge of a network is a ferry.
func hasFerries(network *net.Network) bool {
	for e := range uint32(network.Edges()) {
		if network.Road(e).Class == net.Ferry {
			return true
		}
	}
	return false
}
