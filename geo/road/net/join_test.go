package net_test

import (
	"context"
	"testing"

	"github.com/paulmach/orb"

	"ullage/geo/road"
	"ullage/geo/road/net"
)

// Two extracts that share a way across the border are one network: a route
// goes from one into the other, and the shared way is there once.
func TestJoin(t *testing.T) {
	at := func(i float64) net.Node { return net.Node{Point: orb.Point{i / 100, 0}} }
	r := net.Road{Class: net.Tertiary, Kmh: [2]float32{60, 60}}
	west := net.Input{Nodes: []net.Node{at(0), at(1), at(2)}, Ways: []net.Way{{ID: 1, Nodes: []int32{0, 1}, Road: r}, {ID: 2, Nodes: []int32{1, 2}, Road: r}}, Date: "2025-01-19"}
	east := net.Input{Nodes: []net.Node{at(2), at(3), at(1)}, Ways: []net.Way{{ID: 2, Nodes: []int32{2, 0}, Road: r}, {ID: 3, Nodes: []int32{0, 1}, Road: r}}, Date: "2025-02-01"}
	in := net.Join(west, east)
	if len(in.Nodes) != 4 || len(in.Ways) != 3 || in.Date != "2025-02-01" {
		t.Fatalf("%d nodes, %d ways, %s, want 4, 3, 2025-02-01", len(in.Nodes), len(in.Ways), in.Date)
	}
	network, err := net.Build(context.Background(), in)
	if err != nil {
		t.Fatal(err)
	}
	router, err := road.NewRouter(context.Background(), network, net.Vehicle{}, road.Shortest)
	if err != nil {
		t.Fatal(err)
	}
	path, err := router.Query().Route(router.Snap(orb.Point{0.001, 0}, 100), router.Snap(orb.Point{0.029, 0}, 100))
	// 0.028° of the equator: 3116.9 m (WGS84, 111.319 km a degree).
	if err != nil || path.LengthM < 3116 || path.LengthM > 3118 {
		t.Errorf("%.1f m, %v, want 3116.9", path.LengthM, err)
	}
}
