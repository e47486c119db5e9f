package road_test

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"

	"ullage/data/osm/osmtest"
	"ullage/geo"
	"ullage/geo/road"
	"ullage/geo/road/net"
)

// noisy walks along a line and takes a point every stepM with a normal error of sigma.
func noisy(rng *rand.Rand, ls orb.LineString, stepM, sigma float64) (track orb.LineString) {
	line, err := geo.Measure(ls)
	if err != nil {
		return nil
	}
	for m := 0.0; m < line.LengthM(); m += stepM {
		p := line.At(m)
		track = append(track, orb.Point{p[0] + sigma*rng.NormFloat64()/111195/math.Cos(p[1]*math.Pi/180), p[1] + sigma*rng.NormFloat64()/111195})
	}
	return track
}

// TestMatchFindsTheRoute drives random routes, records them with noise, and counts the metres of road that the match has too
// many and too few, by the measure of Newson and Krumm 2009, section 5.
func TestMatchFindsTheRoute(t *testing.T) {
	n := osmtest.Network(t, andorra)
	car, err := road.NewRouter(context.Background(), n, net.Vehicle{}, road.Shortest)
	if err != nil {
		t.Fatal(err)
	}
	q := car.Query()
	for _, tc := range []struct{ stepM, sigma, mostWrong float64 }{{10, 4, 0.03}, {50, 8, 0.05}, {200, 10, 0.12}} {
		rng := rand.New(rand.NewPCG(5, uint64(tc.stepM)))
		driven, wrong, points := 0.0, 0.0, 0
		for range 40 {
			from, to := road.AnySpot(n, rng), road.AnySpot(n, rng)
			path, err := q.Route(from, to)
			if err != nil || path.LengthM < 3000 {
				continue
			}
			track := noisy(rng, n.Line(path.Steps), tc.stepM, tc.sigma)
			points += len(track)
			course, err := q.Match(context.Background(), track, road.MatchOptions{})
			if err != nil {
				t.Fatal(err)
			}
			metres := map[uint32]float64{}
			add := func(steps []net.Step, sign float64) {
				for _, s := range steps {
					metres[s.Dir] += sign * math.Abs(float64(s.ToCm)-float64(s.FromCm)) / 100
				}
			}
			add(path.Steps, 1)
			for _, s := range course {
				add(s.Steps, -1)
			}
			for _, d := range metres {
				wrong += math.Abs(d)
			}
			driven += path.LengthM
		}
		t.Logf("a point every %.0f m, sigma %.0f m: %.1f %% of %.0f km wrong, %d points", tc.stepM, tc.sigma, 100*wrong/driven, driven/1000, points)
		if driven < 100_000 || wrong > tc.mostWrong*driven {
			t.Errorf("%.1f %% wrong", 100*wrong/driven)
		}
	}
}

// TestMatchKeepsWhatIsDrawn: a way across country between two roads stays as drawn.
func TestMatchKeepsWhatIsDrawn(t *testing.T) {
	n := osmtest.Network(t, osmtest.Demo)
	car, err := road.NewRouter(context.Background(), n, net.Vehicle{}, road.Shortest)
	if err != nil {
		t.Fatal(err)
	}
	q := car.Query()
	rng := rand.New(rand.NewPCG(6, 6))
	path, err := q.Route(road.AnySpot(n, rng), road.AnySpot(n, rng))
	for err != nil || path.LengthM < 20_000 {
		path, err = q.Route(road.AnySpot(n, rng), road.AnySpot(n, rng))
	}
	line := n.Line(path.Steps)
	last := line[len(line)-1]
	out := orb.Point{last[0] + 30, last[1]} // far out at sea
	track := append(noisy(rng, line, 30, 3), out, orb.Point{out[0], out[1] + 0.1})
	course, err := q.Match(context.Background(), track, road.MatchOptions{})
	if err != nil || len(course) < 2 {
		t.Fatal(course, err)
	}
	end := course[len(course)-1]
	if len(end.Drawn) < 3 || end.Drawn[len(end.Drawn)-1] != track[len(track)-1] {
		t.Errorf("the way over the sea is %v", end)
	}
	all, err := q.Match(context.Background(), orb.LineString{out, {out[0], out[1] + 0.1}}, road.MatchOptions{})
	if err != nil || len(all) != 1 || len(all[0].Drawn) != 2 {
		t.Errorf("a track at sea: %v, %v", all, err)
	}
	if c, err := q.Match(context.Background(), nil, road.MatchOptions{}); err != nil || len(c) != 0 {
		t.Errorf("no track: %v, %v", c, err)
	}
}
