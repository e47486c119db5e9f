package model

import (
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/model/sample"
)

func TestBetween(t *testing.T) {
	line := orb.LineString{{0, 0}, {0, 1}, {0, 2}, {0, 4}}
	for _, tc := range []struct {
		from, to float64
		want     orb.LineString
	}{
		{0.125, 0.75, orb.LineString{{0, 0.5}, {0, 1}, {0, 2}, {0, 3}}},
		{0, 1, line}, {0.5, 0.5, nil}, {0.25, 0.5, orb.LineString{{0, 1}, {0, 2}}}, {0.6, 0.7, orb.LineString{{0, 2.4}, {0, 2.8}}},
	} {
		got := Between(line, tc.from, tc.to)
		if len(got) != len(tc.want) {
			t.Errorf("%v to %v: %v, want %v", tc.from, tc.to, got, tc.want)
			continue
		}
		for i := range got {
			if !near(got[i][1], tc.want[i][1]) {
				t.Errorf("%v to %v: %v, want %v", tc.from, tc.to, got, tc.want)
			}
		}
	}
}

func TestAlongAndBack(t *testing.T) {
	line := sample.Trip().Route
	for _, share := range []float64{0, 0.25, 0.5, 0.9, 1} {
		p, ok := Along(line, share)
		if got := ShareNear(line, p); !ok || got < share-0.002 || got > share+0.002 {
			t.Errorf("share %v comes back as %v", share, got)
		}
	}
	if p, ok := Along(orb.LineString{{1, 1}, {1, 1.1}}, 0.5); !ok || !near(p[1], 1.05) {
		t.Errorf("half of a short line is %v, %v", p, ok)
	}
	if _, ok := Along(orb.LineString{{1, 1}, {1, 1}}, 0.5); ok {
		t.Error("a line without length has a middle")
	}
}
