package data

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestClimb(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name     string
		parts    [][]float64
		up, down float64
	}{
		{"none", nil, 0, 0},
		{"not stated", [][]float64{{nan, nan}}, 0, 0},
		{"flat with a wobble", [][]float64{{100, 104, 98, 103, 99, 101}}, 0, 0},
		{"up and down", [][]float64{{100, 150, 300, 250, 100}}, 200, 200},
		{"a wobble on the way up", [][]float64{{100, 150, 146, 200}}, 100, 0},
		{"a dip that counts", [][]float64{{100, 200, 180, 260}}, 180, 20},
		{"down first", [][]float64{{500, 480, 505, 100}}, 25, 425},
		{"a hole in the heights", [][]float64{{nan, 100, nan, 160, nan}}, 60, 0},
		{"the way between parts is not driven", [][]float64{{100, 120}, {900, 880}}, 20, 20},
	} {
		if up, down := (Route{Heights: c.parts}).Climb(); up != c.up || down != c.down {
			t.Errorf("%s: up %v, down %v, want %v and %v", c.name, up, down, c.up, c.down)
		}
	}
}

// What rises and does not fall again is where the route ends: up less down is the
// difference of the ends, but for what is too little to count at both.
func TestClimbEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := rapid.SliceOfN(rapid.Float64Range(0, 3000), 2, 50).Draw(t, "heights")
		up, down := (Route{Heights: [][]float64{h}}).Climb()
		if d := up - down - (h[len(h)-1] - h[0]); math.Abs(d) > 2*climbM || up < 0 || down < 0 {
			t.Fatalf("up %v, down %v, from %v to %v", up, down, h[0], h[len(h)-1])
		}
	})
}

func TestClimbOfAFile(t *testing.T) {
	r, err := ReadRoute("x.gpx", strings.NewReader(`<gpx version="1.1"><trk><trkseg>
<trkpt lat="47" lon="11"><ele>600</ele></trkpt><trkpt lat="47.1" lon="11"><ele>1400</ele></trkpt><trkpt lat="47.2" lon="11"><ele>1000</ele></trkpt></trkseg></trk></gpx>`))
	if err != nil {
		t.Fatal(err)
	}
	if up, down := r.Climb(); up != 800 || down != 400 {
		t.Errorf("up %v, down %v, want 800 and 400", up, down)
	}
}
