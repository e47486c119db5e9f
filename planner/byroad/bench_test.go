package byroad_test

import (
	"bytes"
	"context"
	"os"
	"testing"

	"github.com/paulmach/orb"

	"ullage/data"
	"ullage/data/demo"
	"ullage/data/osm"
	"ullage/data/osm/osmtest"
	"ullage/geo"
	"ullage/planner/byroad"
	"ullage/planner/trip"
)

// benchmarks run on the demo and, where the shared data are, on Andorra.
func benchmarks(b *testing.B, f func(b *testing.B, g *byroad.Guide, t trip.Trip, places []*trip.Place)) {
	ctx := context.Background()
	run := func(name, path string, t trip.Trip) {
		b.Run(name, func(b *testing.B) {
			net := osmtest.Network(b, path)
			x, err := osm.Read(ctx, name, bytes.NewReader(osmtest.Bytes(b, path)), osm.Options{NoBackdrop: true})
			if err != nil {
				b.Fatal(err)
			}
			line, err := geo.Measure(t.Route)
			if err != nil {
				b.Fatal(err)
			}
			corridor := geo.NewCorridor(line)
			var places []*trip.Place
			for i, p := range x.Places {
				if len(corridor.Passes(p.Point, 5000)) > 0 {
					places = append(places, &x.Places[i])
				}
			}
			f(b, guide(b, net), t, places)
			b.ReportMetric(float64(len(places)), "places")
		})
	}
	t := demo.Trip()
	run("demo", osmtest.Demo, t)
	text, err := os.ReadFile("../../cmd/ullage/testdata/andorra-route.geojson")
	if err != nil {
		b.Fatal(err)
	}
	r, err := data.ReadRoute("andorra", bytes.NewReader(text))
	if err != nil {
		b.Fatal(err)
	}
	t.Route = r.Line()
	run("andorra", "osm/andorra-2025-01-19.osm.pbf", t)
}

// BenchmarkCourse puts the route on roads and measures it.
func BenchmarkCourse(b *testing.B) {
	benchmarks(b, func(b *testing.B, g *byroad.Guide, t trip.Trip, _ []*trip.Place) {
		line, _ := geo.Measure(t.Route)
		for i := 0; b.Loop(); i++ {
			t.Route = t.Route.Clone()
			t.Route[0][1] += 1e-9 * float64(i%2*2-1) // another route: nothing is remembered
			if _, err := g.Trip(context.Background()).Course(t, line.LengthM()/1000); err != nil {
				b.Fatal(err)
			}
		}
	})
}

// BenchmarkWays finds all detours of a trip.
func BenchmarkWays(b *testing.B) {
	benchmarks(b, func(b *testing.B, g *byroad.Guide, t trip.Trip, places []*trip.Place) {
		line, _ := geo.Measure(t.Route)
		roads := g.Trip(context.Background())
		if _, err := roads.Course(t, line.LengthM()/1000); err != nil {
			b.Fatal(err)
		}
		for b.Loop() {
			if _, err := roads.Ways(places); err != nil {
				b.Fatal(err)
			}
		}
	})
}

// BenchmarkFollow is a step of a drag: two legs across the region.
func BenchmarkFollow(b *testing.B) {
	benchmarks(b, func(b *testing.B, g *byroad.Guide, t trip.Trip, _ []*trip.Place) {
		n := len(t.Route)
		for i := 0; b.Loop(); i++ {
			middle := t.Route[n/4+i%(n/8)]
			if _, err := g.Follow(context.Background(), t.Vehicle, [][2]orb.Point{{t.Route[0], middle}, {middle, t.Route[n/2]}}, 500); err != nil {
				b.Fatal(err)
			}
		}
	})
}
