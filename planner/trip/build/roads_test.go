package build

import (
	"errors"
	"math"
	"strings"
	"testing"
	"ullage/planner"
	"ullage/planner/trip"
	"ullage/planner/trip/triptest"

	"github.com/paulmach/orb"
)

// A place passed on the way out and back: each pass has the way nearest to
// it; a pass from where no road leads is dropped, off the roads it stays.
func TestWaysByPass(t *testing.T) {
	tr := triptest.Eastwards(100)
	tr.Route = orb.LineString{{0, 0}, {100 / triptest.KmPerDegree, 0}, {100 / triptest.KmPerDegree, 0.2}, {0, 0.2}} // back 22 km to the north
	tr.CorridorKm = 15
	place := triptest.At("a", "fuel", 50, 11, triptest.Yes("diesel"))
	whole := mustBuild(t, tr, []trip.Place{place}, Options{})
	if len(whole.Candidates) != 2 {
		t.Fatalf("%d passes, want 2", len(whole.Candidates))
	}
	first, second := whole.Candidates[0].Km, whole.Candidates[1].Km
	way := func(km, min float64) trip.Way {
		return trip.Way{LeaveKm: km, RejoinKm: km, ThereKm: 1.5, Km: 3, Min: min}
	}
	for _, tc := range []struct {
		name string
		ways []trip.Way
		off  [][2]float64
		want []float64 // km
	}{
		{"both", []trip.Way{way(first+1, 5), way(second-1, 5)}, nil, []float64{first + 1, second - 1}},
		{"one", []trip.Way{way(second, 5)}, nil, []float64{second}},
		{"the shorter", []trip.Way{way(second+2, 6), way(second+1, 5)}, nil, []float64{second + 1}},
		{"off the roads", []trip.Way{way(second, 5)}, [][2]float64{{first - 1, first + 1}}, []float64{first, second}},
	} {
		b := mustBuild(t, tr, []trip.Place{place}, Options{Roads: triptest.Signposts{On: trip.Course{Off: tc.off}, By: map[string][]trip.Way{"a": tc.ways}}})
		if len(b.Problem.Stops) != len(tc.want) || len(b.Candidates) != len(tc.want) {
			t.Errorf("%s: %d stops, %d candidates, want %d", tc.name, len(b.Problem.Stops), len(b.Candidates), len(tc.want))
			continue
		}
		for i, s := range b.Problem.Stops {
			if math.Abs(s.Km-tc.want[i]) > 1e-9 || b.Candidates[b.Calls[s.ID].Candidate].Km != s.Km {
				t.Errorf("%s: stop %s at km %v, want %v", tc.name, s.ID, s.Km, tc.want[i])
			}
		}
	}
}

func TestPaceOfRoads(t *testing.T) {
	pace := []planner.Pace{{ToKm: 50, MinPerKm: 0.8}, {ToKm: 199.9999, MinPerKm: 1.2}}
	b := mustBuild(t, triptest.Eastwards(200), nil, Options{Roads: triptest.Signposts{On: trip.Course{Pace: pace}}})
	if got := b.Problem.Drive.Minutes(0, b.Problem.LengthKm); math.Abs(got-(50*0.8+150*1.2)) > 1e-3 {
		t.Errorf("%v minutes, want 220", got)
	}
	if _, err := Trip(triptest.Eastwards(200), nil, Options{Roads: triptest.Signposts{Err: errors.New("flooded")}}); err == nil || !strings.Contains(err.Error(), "flooded") {
		t.Errorf("err = %v", err)
	}
}
