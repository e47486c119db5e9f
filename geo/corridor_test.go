package geo

import (
	"compress/gzip"
	"encoding/csv"
	"encoding/json"
	"math"
	"strconv"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"
)

// bruteForce is Passes without index: every piece of the line is looked at.
func bruteForce(c *Corridor, p orb.Point, radiusM float64) []Pass {
	var passes []Pass
	place, radius := centred(p)
	chord, within := groundToChord(radiusM, radius), false
	for i := range len(c.verts) - 1 {
		t, off2 := nearest(place, c.verts[i], c.verts[i+1])
		if off2 > chord*chord {
			within = false
			continue
		}
		pass := Pass{
			c.along[i] + t*(c.along[i+1]-c.along[i]),
			chordToGround(math.Sqrt(off2), radius),
			geodetic(lerp(c.verts[i], c.verts[i+1], t)),
		}
		if !within {
			passes = append(passes, pass)
		} else if pass.OffM < passes[len(passes)-1].OffM {
			passes[len(passes)-1] = pass
		}
		end := place.sub(c.verts[i+1])
		within = end.dot(end) <= chord*chord
	}
	return passes
}

func same(a, b []Pass) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].AlongM != b[i].AlongM || !near(a[i].OffM, b[i].OffM, 1e-9) || a[i].Point != b[i].Point {
			return false
		}
	}
	return true
}

func corridorOf(tb testing.TB, ls orb.LineString) (*Line, *Corridor) {
	l, err := Measure(ls)
	if err != nil {
		tb.Fatal(err)
	}
	return l, NewCorridor(l)
}

// What counts as a pass, worked out by hand: 0.01° is 1.11 km on the equator.
func TestPasses(t *testing.T) {
	const deg = 111319.4908 // on the equator, a·π/180
	out := orb.LineString{{0, 0}, {0.2, 0}, {0, 0}}
	for _, tc := range []struct {
		name   string
		line   orb.LineString
		place  orb.Point
		radius float64
		along  []float64 // in degrees of the equator
		off    float64   // of all passes, in the same
	}{
		{"beside", orb.LineString{{0, 0}, {0.2, 0}}, orb.Point{0.1, 0.01}, 2000, []float64{0.1}, 0.99330},
		{"out of reach", orb.LineString{{0, 0}, {0.2, 0}}, orb.Point{0.1, 0.01}, 1100, nil, 0},
		{"before the start", orb.LineString{{0, 0}, {0.2, 0}}, orb.Point{-0.01, 0}, 2000, []float64{0}, 1},
		{"beyond the end", orb.LineString{{0, 0}, {0.2, 0}}, orb.Point{0.21, 0}, 2000, []float64{0.2}, 1},
		{"out and back is two passes", out, orb.Point{0.1, 0}, 1000, []float64{0.1, 0.3}, 0},
		{"a turn within the radius is one", out, orb.Point{0.195, 0}, 1000, []float64{0.195}, 0},
		{"at the turn, one", out, orb.Point{0.2, 0}, 1000, []float64{0.2}, 0},
		{"a closed loop starts and ends here", orb.LineString{{0, 0}, {0.1, 0}, {0.2, 0}, {0.1, 0}, {0, 0}}, orb.Point{0, 0}, 1000, []float64{0, 0.4}, 0},
		{"repeated points add no pass", orb.LineString{{0, 0}, {0.1, 0}, {0.1, 0}, {0.1, 0}, {0.2, 0}}, orb.Point{0.1, 0}, 1000, []float64{0.1}, 0},
		{"points a hair apart add no pass", orb.LineString{{0, 0}, {0.1, 0}, {0.1, 1e-160}, {0.1, 3e-15}, {0.2, 0}}, orb.Point{0.1, 0}, 1000, []float64{0.1}, 0},
		{"over the antimeridian", orb.LineString{{179.9, 0}, {-179.9, 0}}, orb.Point{-179.99, 0}, 1000, []float64{0.11}, 0},
		{"over the antimeridian, unwrapped", orb.LineString{{179.9, 0}, {180.1, 0}}, orb.Point{-179.99, 0}, 1000, []float64{0.11}, 0},
		{"a turn more", orb.LineString{{-0.1, 0}, {0.1, 0}}, orb.Point{360, 0}, 1000, []float64{0.1}, 0},
		{"radius 0, on a vertex", orb.LineString{{0, 0}, {0.2, 0}}, orb.Point{0.2, 0}, 0, []float64{0.2}, 0},
		{"radius NaN", orb.LineString{{0, 0}, {0.2, 0}}, orb.Point{0.1, 0}, math.NaN(), nil, 0},
		{"radius below 0", orb.LineString{{0, 0}, {0.2, 0}}, orb.Point{0.1, 0}, -1, nil, 0},
		{"place NaN", orb.LineString{{0, 0}, {0.2, 0}}, orb.Point{math.NaN(), 0}, 1000, nil, 0},
		{"place off the earth", orb.LineString{{0, 0}, {0.2, 0}}, orb.Point{0, 91}, 1000, nil, 0},
		{"the whole earth", orb.LineString{{0, 0}, {0.2, 0}}, orb.Point{0.1, 0}, 3e7, []float64{0.1}, 0},
	} {
		t.Run(tc.name, func(t *testing.T) {
			_, c := corridorOf(t, tc.line)
			passes := c.Passes(tc.place, tc.radius)
			if len(passes) != len(tc.along) {
				t.Fatalf("Passes = %v, want %d", passes, len(tc.along))
			}
			for i, p := range passes {
				if !near(p.AlongM, tc.along[i]*deg, 0.05) || !near(p.OffM, tc.off*deg/100, 0.05) {
					t.Errorf("pass %d = %v, want %.2f along and %.2f off", i, p, tc.along[i]*deg, tc.off*deg/100)
				}
			}
		})
	}
}

func TestPassesOverThePole(t *testing.T) {
	_, c := corridorOf(t, orb.LineString{{20, 89.5}, {-160, 89.5}})
	for _, place := range []orb.Point{{20, 89.99}, {110, 89.99}, {-160, 89.99}, {0, 90}, {77, 90}} {
		passes := c.Passes(place, 5000)
		if len(passes) != 1 || passes[0].OffM > 1117 {
			t.Errorf("Passes(%v) = %v, want one within 1117 m", place, passes)
		}
	}
}

// The index changes no answer: random lines anywhere on earth, against looking
// at every piece; and each pass lies where geodesics say, within what the
// docstring promises.
func TestPassesAgainstBruteForceAndGeodesics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ls := drawLine(t)
		l, err := Measure(ls)
		if err != nil {
			t.Skip(err)
		}
		c := NewCorridor(l)
		radius := rapid.SampledFrom([]float64{50, 500, 5000, 30000, 100000, 1e6}).Draw(t, "radius")
		d := radius / 70000
		p := l.At(rapid.Float64Range(0, l.LengthM()).Draw(t, "m"))
		p = orb.Point{p[0] + rapid.Float64Range(-d, d).Draw(t, "dx"), max(-90, min(90, p[1]+rapid.Float64Range(-d, d).Draw(t, "dy")))}
		if math.Abs(p[0]) > 360 {
			t.Skip("off the map")
		}
		passes := c.Passes(p, radius)
		if want := bruteForce(c, p, radius); !same(passes, want) {
			t.Fatalf("Passes(%v, %v) = %v, want %v", p, radius, passes, want)
		}
		for i, pass := range passes {
			if i > 0 && pass.AlongM <= passes[i-1].AlongM {
				t.Fatalf("passes not in order: %v", passes)
			}
			if pass.OffM > 100000 {
				continue
			}
			if off := DistanceM(p, l.At(pass.AlongM)); !near(off, pass.OffM, 0.05) {
				t.Fatalf("OffM = %v, by geodesics %v", pass.OffM, off)
			}
			if d := DistanceM(pass.Point, l.At(pass.AlongM)); d > 0.05 {
				t.Fatalf("Point is %v m from At(AlongM)", d)
			}
			// No point of the line near the pass is nearer by more than the error.
			for _, step := range []float64{1, 30, 300} {
				for _, m := range []float64{pass.AlongM - step, pass.AlongM + step} {
					if off := DistanceM(p, l.At(m)); off < pass.OffM-0.05 && off <= radius && len(passes) == 1 {
						t.Fatalf("%v m on the line is %v m near, the pass at %v m only %v", m, off, pass.AlongM, pass.OffM)
					}
				}
			}
		}
	})
}

// stations reads the Italian fuel stations of 15 March 2020 (IODL 2.0).
func stations(tb testing.TB) []orb.Point {
	zip, err := gzip.NewReader(open(tb, "prices/italy-stations-osmtags-2020-03-15.nooperator.csv.gz"))
	if err != nil {
		tb.Fatal(err)
	}
	rows, err := csv.NewReader(zip).ReadAll()
	if err != nil {
		tb.Fatal(err)
	}
	var points []orb.Point
	for _, row := range rows[1:] {
		lat, err1 := strconv.ParseFloat(row[len(row)-2], 64)
		lon, err2 := strconv.ParseFloat(row[len(row)-1], 64)
		if err1 == nil && err2 == nil {
			points = append(points, orb.Point{lon, lat})
		}
	}
	return points
}

// romeNaples is a road of 252 km and 2,050 points (turf.js test data, MIT).
func romeNaples(tb testing.TB) orb.LineString {
	var f struct {
		Geometry struct{ Coordinates orb.LineString }
	}
	if err := json.NewDecoder(open(tb, "routes/turf-route2-Rome-Naples-area-252km.geojson")).Decode(&f); err != nil {
		tb.Fatal(err)
	}
	return f.Geometry.Coordinates
}

func TestCorridorOnAWholeCountry(t *testing.T) {
	_, c := corridorOf(t, romeNaples(t))
	points := stations(t)
	for _, radius := range []float64{1000, 5000, 20000} {
		found := 0
		for i, p := range points {
			if radius != 5000 && i%10 > 0 {
				continue
			}
			passes := c.Passes(p, radius)
			if want := bruteForce(c, p, radius); !same(passes, want) {
				t.Fatalf("Passes(%v, %v) = %v, want %v", p, radius, passes, want)
			}
			if len(passes) > 0 {
				found++
			}
		}
		if found == 0 || found == len(points) {
			t.Errorf("%d of %d stations within %v m", found, len(points), radius)
		}
	}
}

func BenchmarkCorridor(b *testing.B)           { benchmark(b, (*Corridor).Passes) }
func BenchmarkCorridorBruteForce(b *testing.B) { benchmark(b, bruteForce) }

func benchmark(b *testing.B, passes func(*Corridor, orb.Point, float64) []Pass) {
	_, c := corridorOf(b, romeNaples(b))
	points := stations(b)
	for _, radius := range []float64{1000, 5000, 20000} {
		b.Run(strconv.Itoa(int(radius/1000))+"km", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				for _, p := range points {
					passes(c, p, radius)
				}
			}
		})
	}
}

func BenchmarkMeasure(b *testing.B) {
	ls := romeNaples(b)
	for b.Loop() {
		if _, err := Measure(ls); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkNewCorridor(b *testing.B) {
	l, _ := corridorOf(b, romeNaples(b))
	for b.Loop() {
		NewCorridor(l)
	}
}
