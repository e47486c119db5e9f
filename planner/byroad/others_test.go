package byroad_test

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"

	"ullage/data/demo"
	"ullage/data/osm/osmtest"
	"ullage/geo"
)

// Another way is two legs over a point: who asks for the ways to it and from it gets them again. It costs no more than
// 1.3 times the best way (Abraham et al. 2013, see road.Query.Alternatives), where roads for guests count twenty-fold; in
// minutes that may be a little more. It goes elsewhere.
func TestOthers(t *testing.T) {
	for _, path := range []string{osmtest.Demo, "osm/andorra-2025-01-19.osm.pbf"} {
		t.Run(path, func(t *testing.T) {
			net := osmtest.Network(t, path)
			g := guide(t, net)
			v := demo.Trip().Vehicle
			ctx := context.Background()
			rng := rand.New(rand.NewPCG(3, 4))
			spot := func() orb.Point { return net.PointAt(rng.Uint32N(uint32(net.Edges())), 0) }
			found, named := 0, 0
			for range 60 {
				a, b := spot(), spot()
				legs, err := g.Others(ctx, v, [2]orb.Point{a, b}, 250)
				if err != nil || len(legs)%2 != 0 {
					t.Fatal(len(legs), err)
				}
				best, err := g.Follow(ctx, v, [][2]orb.Point{{a, b}}, 250)
				if err != nil {
					t.Fatal(err)
				}
				before := []orb.LineString{best[0].Line}
				for i := 0; i < len(legs); i += 2 {
					found++
					if legs[i].By != "" {
						named++
					}
					line := legs[i].Line
					via := line[len(line)-1]
					again, err := g.Follow(ctx, v, [][2]orb.Point{{a, via}, {via, b}}, 250)
					if err != nil {
						t.Fatal(err)
					}
					if s, most := legs[i].S+legs[i+1].S, best[0].S; s < most-1 || s > 1.5*most || legs[i].Drawn || legs[i+1].Drawn {
						t.Errorf("from %v to %v: %.0f s, the best way %.0f s", a, b, s, most)
					}
					for k, leg := range again {
						was := legs[i+k]
						if math.Abs(leg.M-was.M) > 1+1e-4*was.M || math.Abs(leg.S-was.S) > 1+1e-4*was.S || leg.Drawn {
							t.Errorf("from %v by way of %v to %v: leg %d is %.0f m, was %.0f m", a, via, b, k, leg.M, was.M)
						}
					}
					// No two are nearly the same.
					whole := append(line[:len(line):len(line)], legs[i+1].Line[1:]...)
					for _, other := range before {
						if s := shared(whole, other); s > 0.9 {
							t.Errorf("from %v to %v: two ways share %.2f", a, b, s)
						}
					}
					before = append(before, whole)
				}
			}
			t.Logf("%d other ways for 60 pairs, %d by a road with a name", found, named)
			if found < 15 || named < found/3 {
				t.Errorf("only %d other ways for 60 pairs, %d with a name", found, named)
			}
		})
	}
	// No roads, no way: none.
	g := guide(t, island(t))
	if legs, err := g.Others(context.Background(), demo.Trip().Vehicle, [2]orb.Point{{10, 10}, {11, 11}}, 250); err != nil || legs != nil {
		t.Errorf("off the roads: %v, %v", legs, err)
	}
}

// shared is the share of a line's length whose pieces another has too.
func shared(line, other orb.LineString) float64 {
	has := map[[2]orb.Point]bool{}
	for i := 1; i < len(other); i++ {
		has[[2]orb.Point{other[i-1], other[i]}] = true
	}
	both, whole := 0.0, 0.0
	for i := 1; i < len(line); i++ {
		d := geo.DistanceM(line[i-1], line[i])
		if whole += d; has[[2]orb.Point{line[i-1], line[i]}] {
			both += d
		}
	}
	return both / whole
}
