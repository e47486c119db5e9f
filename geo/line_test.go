package geo

import (
	"bufio"
	"errors"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"
)

// open opens a file of the shared open data, or skips the test.
func open(tb testing.TB, path string) *os.File {
	f, err := os.Open("../../shared/data/" + path)
	if err != nil {
		tb.Skipf("open data are not beside the project, as ../shared/data: %v", err)
	}
	tb.Cleanup(func() { f.Close() })
	return f
}

func near(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

// GeodTest-100.dat: C. F. F. Karney, "Test set for geodesics", 2010,
// doi:10.5281/zenodo.32156: lat1 lon1 azi1 lat2 lon2 azi2 s12 a12 m12 S12, s12
// to 0.1 µm.
func TestDistanceAgainstGeodTest(t *testing.T) {
	const toleranceM = 1e-6
	lines, worst := 0, 0.0
	for scan := bufio.NewScanner(open(t, "geodesy/GeodTest-100.dat")); scan.Scan(); lines++ {
		var lat1, lon1, azi1, lat2, lon2, azi2, s12 float64
		if _, err := fmt.Sscan(scan.Text(), &lat1, &lon1, &azi1, &lat2, &lon2, &azi2, &s12); err != nil {
			t.Fatal(err)
		}
		a, b := orb.Point{lon1, lat1}, orb.Point{lon2, lat2}
		worst = max(worst, math.Abs(DistanceM(a, b)-s12))
		// The same geodesic as a line; half of it and at most a kilometre of it.
		l, err := Measure(orb.LineString{a, b})
		if err != nil {
			t.Fatal(err)
		}
		worst = max(worst, math.Abs(l.LengthM()-s12))
		for _, m := range []float64{s12 / 2, min(s12/3, 1000)} {
			p := l.At(m)
			worst = max(worst, math.Abs(DistanceM(a, p)-m))
			// Seen from the other end; a nearly antipodal line has several shortest ways.
			worst = max(worst, math.Abs(DistanceM(p, b)-(s12-m)))
		}
	}
	if lines != 100 || !(worst <= toleranceM) {
		t.Errorf("%d lines, largest error %v m, want 100 and at most %v", lines, worst, toleranceM)
	}
	t.Logf("largest error over %d geodesics and points on them: %.2g m", lines, worst)
}

func TestMeasure(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	// A degree of latitude at the equator and of longitude on it: 110,574.39 m
	// and 111,319.49 m (WGS84; a·π/180 is the second, GeodSolve -i the first).
	for _, tc := range []struct {
		name string
		line orb.LineString
		want float64 // NaN: refused
		text string
	}{
		{"latitude", orb.LineString{{0, 0}, {0, 1}}, 110574.3886, ""},
		{"longitude", orb.LineString{{0, 0}, {1, 0}}, 111319.4908, ""},
		{"antimeridian", orb.LineString{{179.5, 0}, {-179.5, 0}}, 111319.4908, ""},
		{"antimeridian unwrapped", orb.LineString{{179.5, 0}, {180.5, 0}}, 111319.4908, ""},
		{"over the pole", orb.LineString{{0, 89}, {180, 89}}, 2 * 111693.8649, ""}, // GeodSolve -i
		{"repeats", orb.LineString{{0, 0}, {0, 0}, {1, 0}, {1, 0}, {0, 0}}, 2 * 111319.4908, ""},
		{"empty", nil, nan, "two different points"},
		{"one point", orb.LineString{{1, 1}}, nan, "two different points"},
		{"same point", orb.LineString{{1, 1}, {1, 1}}, nan, "two different points"},
		{"a hair apart", orb.LineString{{0, 0}, {1e-160, 1e-15}}, nan, "two different points"},
		{"a turn is the same point", orb.LineString{{-180, 1}, {180, 1}}, nan, "two different points"},
		{"NaN", orb.LineString{{0, 0}, {nan, 1}}, nan, "point 2 of the line is NaN, 1"},
		{"infinite", orb.LineString{{0, inf}, {0, 1}}, nan, "point 1 of the line"},
		{"latitude first", orb.LineString{{45, 100}, {45, 101}}, nan, "no place on earth"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			l, err := Measure(tc.line)
			if math.IsNaN(tc.want) {
				if err == nil || !strings.Contains(err.Error(), tc.text) {
					t.Fatalf("Measure = %v, want an error with %q", err, tc.text)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if !near(l.LengthM(), tc.want, 1e-3) {
				t.Errorf("LengthM = %.4f, want %.4f", l.LengthM(), tc.want)
			}
		})
	}
	if _, err := Measure(nil); !errors.Is(err, ErrTooShort) {
		t.Errorf("Measure(nil) = %v, want ErrTooShort", err)
	}
}

func TestAt(t *testing.T) {
	l, err := Measure(orb.LineString{{10, 0}, {10, 0}, {11, 0}, {11, 1}})
	if err != nil {
		t.Fatal(err)
	}
	for _, tc := range []struct {
		m    float64
		want orb.Point
	}{
		{-5, orb.Point{10, 0}},
		{0, orb.Point{10, 0}},
		{111319.4908 / 2, orb.Point{10.5, 0}},
		{l.AlongM(2), orb.Point{11, 0}},
		{l.LengthM(), orb.Point{11, 1}},
		{1e9, orb.Point{11, 1}},
		{math.NaN(), orb.Point{11, 1}},
	} {
		if got := l.At(tc.m); DistanceM(got, tc.want) > 1e-3 {
			t.Errorf("At(%v) = %v, want %v", tc.m, got, tc.want)
		}
	}
}

// Reversing a line keeps its length, and walking to every vertex meets it.
func TestLineProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ls := drawLine(t)
		l, err := Measure(ls)
		if err != nil {
			t.Skip(err)
		}
		back := ls.Clone()
		back.Reverse()
		r, err := Measure(back)
		if err != nil || !near(l.LengthM(), r.LengthM(), 1e-6) {
			t.Fatalf("reversed: %v, %v, want %v", r.LengthM(), err, l.LengthM())
		}
		for i, p := range ls {
			if d := DistanceM(l.At(l.AlongM(i)), p); d > 1e-6 {
				t.Fatalf("vertex %d is %v m from At(AlongM)", i, d)
			}
		}
	})
}

// drawLine draws a line of sides up to some 100 km, anywhere on earth.
func drawLine(t *rapid.T) orb.LineString {
	at := orb.Point{rapid.Float64Range(-200, 200).Draw(t, "lon"), rapid.Float64Range(-90, 90).Draw(t, "lat")}
	ls := orb.LineString{at}
	step := rapid.Float64Range(-1, 1)
	for range rapid.IntRange(1, 12).Draw(t, "sides") {
		k := rapid.SampledFrom([]float64{0.001, 0.01, 0.1, 1}).Draw(t, "scale")
		at = orb.Point{at[0] + k*step.Draw(t, "dx"), max(-90, min(90, at[1]+k*step.Draw(t, "dy")))}
		ls = append(ls, at)
	}
	return ls
}
