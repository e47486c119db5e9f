package osm

import (
	"math"
	"testing"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"
	"pgregory.net/rapid"
)

func TestPosition(t *testing.T) {
	for _, tc := range []struct {
		name string
		ls   orb.LineString
		want orb.Point
	}{
		{"point", orb.LineString{{1, 2}}, orb.Point{1, 2}},
		{"line", orb.LineString{{0, 0}, {2, 0}}, orb.Point{1, 0}},
		{"line, second half", orb.LineString{{0, 0}, {1, 0}, {4, 0}}, orb.Point{2, 0}},
		{"line, a degree of longitude counts half at 60° north", orb.LineString{{0, 60}, {1, 60}, {1, 60.25}}, orb.Point{0.75, 60}},
		{"line that stops at first", orb.LineString{{0, 0}, {0, 0}, {2, 0}}, orb.Point{1, 0}},
		{"open line of four", orb.LineString{{0, 0}, {2, 0}, {2, 2}, {2, 4}}, orb.Point{2, 1.0}},
		{"there and back", orb.LineString{{0, 0}, {2, 0}, {0, 0}}, orb.Point{2, 0}},
		{"same point twice", orb.LineString{{1, 2}, {1, 2}}, orb.Point{1, 2}},
		{"square", orb.LineString{{0, 0}, {2, 0}, {2, 2}, {0, 2}, {0, 0}}, orb.Point{1, 1}},
		{"square the other way", orb.LineString{{0, 0}, {0, 2}, {2, 2}, {2, 0}, {0, 0}}, orb.Point{1, 1}},
		{"triangle: a third of the height", orb.LineString{{0, 0}, {3, 0}, {0, 3}, {0, 0}}, orb.Point{1, 1}},
		{"no area", orb.LineString{{1, 1}, {2, 2}, {3, 3}, {1, 1}}, orb.Point{1, 1}},
		// A U: its centroid lies in the gap, so the nearest corner, which is on the object.
		{"U", orb.LineString{{0, 0}, {9, 0}, {9, 9}, {8, 9}, {8, 1}, {1, 1}, {1, 9}, {0, 9}, {0, 0}}, orb.Point{1, 1}},
	} {
		got := position(tc.ls)
		if tc.name == "U" {
			if got != (orb.Point{1, 1}) && got != (orb.Point{8, 1}) {
				t.Errorf("U: %v, want a corner of the inner side", got)
			}
			continue
		}
		if math.Hypot(got[0]-tc.want[0], got[1]-tc.want[1]) > 1e-12 {
			t.Errorf("%s: position = %v, want %v", tc.name, got, tc.want)
		}
	}
}

// The centroid of github.com/paulmach/orb/planar, and for any ring a point of its box.
func TestPositionOfRings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 12).Draw(t, "corners")
		var ring orb.LineString
		for range n {
			ring = append(ring, orb.Point{rapid.Float64Range(-180, 180).Draw(t, "lon"), rapid.Float64Range(-85, 85).Draw(t, "lat")})
		}
		ring = append(ring, ring[0])
		p := position(ring)
		if box := ring.Bound().Pad(1e-6); !box.Contains(p) {
			t.Fatalf("%v is outside of %v", p, ring)
		}
		c, area := planar.CentroidArea(orb.Polygon{orb.Ring(ring)})
		if math.Abs(area) > 1e-3 && within(ring, c) && within(ring, p) && math.Hypot(p[0]-c[0], p[1]-c[1]) > 1e-6 {
			t.Fatalf("centroid %v, reference %v", p, c)
		}
	})
}

func within(ring orb.LineString, p orb.Point) bool { return planar.RingContains(orb.Ring(ring), p) }

// The halves of a square, in any order and direction, make one ring; an open rest stays a line.
func TestJoinRings(t *testing.T) {
	a := orb.LineString{{0, 0}, {2, 0}, {2, 2}}
	b := orb.LineString{{0, 0}, {0, 2}, {2, 2}}
	for _, lines := range [][]orb.LineString{{a, b}, {b, a}, {reversed(a), b}, {a, reversed(b)}, {reversed(a), reversed(b)}} {
		rings := joinRings(lines)
		if len(rings) != 1 || len(rings[0]) != 5 || position(rings[0]) != (orb.Point{1, 1}) {
			t.Errorf("joinRings(%v) = %v", lines, rings)
		}
	}
	if rings := joinRings([]orb.LineString{a, {{5, 5}, {6, 6}}, nil}); len(rings) != 2 {
		t.Errorf("open lines: %v", rings)
	}
}

func reversed(ls orb.LineString) orb.LineString {
	out := ls.Clone()
	out.Reverse()
	return out
}
