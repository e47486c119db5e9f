package road_test

import (
	"bytes"
	"context"
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"

	"ullage/data/osm/osmtest"
	"ullage/data/osm/roads"
	"ullage/geo/road"
	"ullage/geo/road/net"
)

// delaware is the test data of github.com/paulmach/osm. Under js/wasm no program can be started; PAULMACH_OSM_DIR then names
// the module's folder.
const delaware = "module:delaware-latest.osm.pbf"

// BenchmarkOpenData goes from the bytes of an extract to detours, step by step.
func BenchmarkOpenData(b *testing.B) {
	ctx := context.Background()
	for name, path := range map[string]string{"andorra": andorra, "delaware": delaware} {
		data := osmtest.Bytes(b, path)
		in, err := roads.Read(ctx, path, bytes.NewReader(data), roads.Options{})
		if err != nil {
			b.Fatal(err)
		}
		n, err := net.Build(ctx, in)
		if err != nil {
			b.Fatal(err)
		}
		camper := net.Vehicle{HeightM: 3.05, WidthM: 2.3, LengthM: 7.4, MassT: 3.5, MarginM: 0.1, TopKmh: 95, Factor: 0.9}
		r, err := road.NewRouter(ctx, n, camper, road.Fastest)
		if err != nil {
			b.Fatal(err)
		}
		shortest, err := road.NewRouter(ctx, n, net.Vehicle{}, road.Shortest)
		if err != nil {
			b.Fatal(err)
		}
		b.Logf("%s: %d bytes of map data, %d states, %d edges, %d bytes in memory, %d of a router, %d coded", name, len(data), n.States(), n.Edges(), n.Bytes(), r.Bytes(), len(n.Encode()))
		q := r.Query()
		rng := rand.New(rand.NewPCG(3, 3))
		pair := func() (road.Spot, road.Spot) { return road.AnySpot(n, rng), road.AnySpot(n, rng) }
		var longest road.Path
		for range 300 {
			if p, err := q.Route(pair()); err == nil && p.LengthM > longest.LengthM {
				longest = p
			}
		}
		line := n.Line(longest.Steps)
		var places []road.Spot
		for len(places) < 1000 {
			p := line[rng.IntN(len(line))]
			if s := r.SnapSite(road.Site{Point: orb.Point{p[0] + 0.05*(rng.Float64()-0.5), p[1] + 0.05*(rng.Float64()-0.5)}}, 5000); s.OK {
				places = append(places, s)
			}
		}
		run := func(what string, fn func()) {
			b.Run(name+"/"+what, func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					fn()
				}
			})
		}
		run("ReadRoads", func() { roads.Read(ctx, path, bytes.NewReader(data), roads.Options{}) })
		run("Build", func() { net.Build(ctx, in) })
		coded := n.Encode()
		run("Decode", func() { net.Decode(ctx, coded) })
		run("Router", func() { road.NewRouter(ctx, n, camper, road.Fastest) })
		run("Cost", func() { q.Cost(pair()) })
		run("Route", func() { q.Route(pair()) })
		run("Snap", func() { r.Snap(line[rng.IntN(len(line))], 1000) })
		run("Dijkstra", func() { from, to := pair(); road.OracleCost(r, from, to) })
		run("Detours1000", func() { q.Detours(ctx, longest.Course(), places, road.DetourOptions{}) })
		run("Alternatives", func() { from, to := pair(); q.Alternatives(from, to, 3) })
		match := shortest.Query()
		run("Match", func() { match.Match(ctx, line, road.MatchOptions{}) })
	}
}
