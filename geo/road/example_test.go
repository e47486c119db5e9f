package road_test

import (
	"bytes"
	"context"
	"fmt"

	"github.com/paulmach/orb"

	"ullage/data/demo"
	"ullage/data/osm/roads"
	"ullage/geo/road"
	"ullage/geo/road/net"
)

// From the bytes of an extract to a route by two clicks, with what a high vehicle must avoid.
func Example() {
	ctx := context.Background()
	input, err := roads.Read(ctx, "island.osm.pbf", bytes.NewReader(demo.Extract()), roads.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	network, err := net.Build(ctx, input)
	if err != nil {
		fmt.Println(err)
		return
	}
	high := net.Vehicle{HeightM: 3.05, WidthM: 2.3, LengthM: 7.4, MassT: 3.5, MarginM: net.DefaultMarginM}
	router, err := road.NewRouter(ctx, network, high, road.Shortest)
	if err != nil {
		fmt.Println(err)
		return
	}
	anyCar, err := road.NewRouter(ctx, network, net.Vehicle{}, road.Shortest)
	if err != nil {
		fmt.Println(err)
		return
	}
	// On either side of a low bridge of the island.
	low := lowRoad(network)
	from, to := router.Snap(low[0], 2000), router.Snap(low[len(low)-1], 2000)
	path, err := router.Query().Route(from, to)
	if err != nil {
		fmt.Println(err)
		return
	}
	free, err := anyCar.Query().Route(from, to)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("farther:", path.LengthM > free.LengthM)
	for _, note := range router.Avoided(free) {
		fmt.Printf("avoided: limit %.2f m, vehicle %.2f m\n", note.Bar.Limit, note.Bar.Has)
	}
	// Output:
	// farther: true
	// avoided: limit 2.70 m, vehicle 3.05 m
}

// lowRoad finds the ends of the first road with a limit of 2.7 m.
func lowRoad(n *net.Network) orb.LineString {
	for e := range uint32(n.Edges()) {
		if n.Road(e).Limits.HeightCm == 270 {
			return n.Line([]net.Step{{Dir: e << 1, ToCm: n.LengthCm(e)}})
		}
	}
	return nil
}
