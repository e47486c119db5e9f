package road

import (
	"context"
	"math/rand/v2"
	"testing"

	"ullage/geo/road/net"
)

// This file makes networks and routers for tests.

func built(t testing.TB, in net.Input) *net.Network {
	t.Helper()
	n, err := net.Build(context.Background(), in)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func routed(t testing.TB, n *net.Network, v net.Vehicle, aim Aim) *Router {
	t.Helper()
	r, err := NewRouter(context.Background(), n, v, aim)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// testVehicles are of five kinds: any car, a van, a coachbuilt, a heavy one, and one that shuns things.
var testVehicles = []net.Vehicle{
	{},
	{HeightM: 2.65, WidthM: 2.1, LengthM: 6, MassT: 3.5, MarginM: 0.1, TopKmh: 95, Factor: 0.9},
	{HeightM: 3.05, WidthM: 2.3, LengthM: 7.4, MassT: 3.5, MarginM: 0.1, TopKmh: 95, Factor: 0.9},
	{HeightM: 3.4, WidthM: 2.35, LengthM: 8.8, MassT: 7.5, AxleT: 4.8, MarginM: 0.15, TopKmh: 80, Factor: 0.85},
	{HeightM: 2.8, NoToll: true, NoFerry: true, NoTrack: true, NoUnpaved: true, NoHighways: true},
}

func anySpot(n *net.Network, rng *rand.Rand) Spot {
	e := uint32(rng.IntN(n.Edges()))
	return Spot{OK: true, Edge: e, Cm: uint32(rng.IntN(int(n.LengthCm(e)) + 1))}
}
