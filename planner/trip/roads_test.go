package trip

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/planner"
)

// signposts are roads that say what a test wants.
type signposts struct {
	course Course
	ways   map[string][]Way // by place, their numbers are filled in
	err    error
}

func (s signposts) Course(Trip, float64) (Course, error) { return s.course, s.err }

func (s signposts) Ways(places []*Place) ([]Way, error) {
	var out []Way
	for i, p := range places {
		for _, w := range s.ways[p.ID] {
			w.Place = i
			out = append(out, w)
		}
	}
	return out, nil
}

func TestWaysReplaceEstimates(t *testing.T) {
	places := []Place{at("a", "fuel", 100, 1, yes("diesel")), at("b", "fuel", 150, 1, yes("diesel")), at("c", "fuel", 190, 1, yes("diesel"))}
	b := mustBuild(t, eastwards(200), places, Options{Roads: signposts{
		course: Course{Cautions: []string{"mind the ford"}},
		ways: map[string][]Way{
			"a": {{LeaveKm: 99, RejoinKm: 103, ThereKm: 4.25, Km: 4.5, Min: 9}},
			"b": {{Closed: "height limit 2.70 m"}},
		}}})
	a := stopOf(t, b, "a")
	// Reached after 99 + 4.25 km, which are 101 and half of 4.5.
	if a.Km != 101 || a.DetourKm != 4.5 || a.DetourMin != 9 {
		t.Errorf("a = km %v, %v km, %v min, want 101, 4.5, 9", a.Km, a.DetourKm, a.DetourMin)
	}
	if c := stopOf(t, b, "c"); math.Abs(c.DetourKm-2*1.4) > 0.01 { // not known to the roads: 1 km × 1.4, both ways
		t.Errorf("c detours %v km, want the estimate", c.DetourKm)
	}
	for _, c := range b.Candidates {
		if want := map[string]string{"b": "height limit 2.70 m"}[c.Place]; c.Excluded != want || c.ByRoad != (c.Place == "a") {
			t.Errorf("%s: excluded %q, by road %v", c.Place, c.Excluded, c.ByRoad)
		}
	}
	for _, s := range b.Problem.Stops {
		if s.ID == "b" {
			t.Error("b is a stop, though it cannot be reached")
		}
	}
	it, err := b.Plan(t.Context(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if it.Cautions[0] != "mind the ford" && it.Cautions[1] != "mind the ford" {
		t.Errorf("cautions %q lack the road's", it.Cautions)
	}
}

// Where one drives in is said where that is apart from the place.
func TestEntry(t *testing.T) {
	place := at("a", "fuel", 100, 0.1, yes("diesel"))
	for _, tc := range []struct {
		north float64 // metres from the place to its road
		want  bool
	}{{25, false}, {80, true}} {
		entry := Entry{orb.Point{place.Point[0], place.Point[1] + tc.north/110_574}, "Mill Lane"}
		tr := eastwards(200)
		tr.Levels = map[string]float64{"diesel": 24} // it must refuel
		b := mustBuild(t, tr, []Place{place}, Options{Roads: signposts{ways: map[string][]Way{"a": {{LeaveKm: 100, RejoinKm: 100, ThereKm: 0.1, Km: 0.2, Min: 1, Entry: entry}}}}})
		it, err := b.Plan(t.Context(), Options{})
		if err != nil || len(it.Days) == 0 || len(it.Days[0].Calls) == 0 {
			t.Fatalf("%v: no call in %+v (%v)", err, it.Days, it.Why)
		}
		if got := it.Days[0].Calls[0].Entry; (got != nil) != tc.want || got != nil && *got != entry {
			t.Errorf("%v m off the road: entry %+v", tc.north, got)
		}
	}
}

// A place passed on the way out and back: each pass has the way nearest to
// it; a pass from where no road leads is dropped, off the roads it stays.
func TestWaysByPass(t *testing.T) {
	tr := eastwards(100)
	tr.Route = orb.LineString{{0, 0}, {100 / kmPerDegree, 0}, {100 / kmPerDegree, 0.2}, {0, 0.2}} // back 22 km to the north
	tr.CorridorKm = 15
	place := at("a", "fuel", 50, 11, yes("diesel"))
	whole := mustBuild(t, tr, []Place{place}, Options{})
	if len(whole.Candidates) != 2 {
		t.Fatalf("%d passes, want 2", len(whole.Candidates))
	}
	first, second := whole.Candidates[0].Km, whole.Candidates[1].Km
	way := func(km, min float64) Way { return Way{LeaveKm: km, RejoinKm: km, ThereKm: 1.5, Km: 3, Min: min} }
	for _, tc := range []struct {
		name string
		ways []Way
		off  [][2]float64
		want []float64 // km
	}{
		{"both", []Way{way(first+1, 5), way(second-1, 5)}, nil, []float64{first + 1, second - 1}},
		{"one", []Way{way(second, 5)}, nil, []float64{second}},
		{"the shorter", []Way{way(second+2, 6), way(second+1, 5)}, nil, []float64{second + 1}},
		{"off the roads", []Way{way(second, 5)}, [][2]float64{{first - 1, first + 1}}, []float64{first, second}},
	} {
		b := mustBuild(t, tr, []Place{place}, Options{Roads: signposts{course: Course{Off: tc.off}, ways: map[string][]Way{"a": tc.ways}}})
		if len(b.Problem.Stops) != len(tc.want) || len(b.Candidates) != len(tc.want) {
			t.Errorf("%s: %d stops, %d candidates, want %d", tc.name, len(b.Problem.Stops), len(b.Candidates), len(tc.want))
			continue
		}
		for i, s := range b.Problem.Stops {
			if math.Abs(s.Km-tc.want[i]) > 1e-9 || b.Candidates[b.calls[s.ID].candidate].Km != s.Km {
				t.Errorf("%s: stop %s at km %v, want %v", tc.name, s.ID, s.Km, tc.want[i])
			}
		}
	}
}

func TestPaceOfRoads(t *testing.T) {
	pace := []planner.Pace{{ToKm: 50, MinPerKm: 0.8}, {ToKm: 199.9999, MinPerKm: 1.2}}
	b := mustBuild(t, eastwards(200), nil, Options{Roads: signposts{course: Course{Pace: pace}}})
	if got := b.Problem.Drive.Minutes(0, b.Problem.LengthKm); math.Abs(got-(50*0.8+150*1.2)) > 1e-3 {
		t.Errorf("%v minutes, want 220", got)
	}
	if _, err := Build(eastwards(200), nil, Options{Roads: signposts{err: errors.New("flooded")}}); err == nil || !strings.Contains(err.Error(), "flooded") {
		t.Errorf("err = %v", err)
	}
}

// Without a plan the places decide.
func TestWayCautionWithoutAPlan(t *testing.T) {
	if got := wayCaution(nil, []Candidate{{ByRoad: true}, {Excluded: "private"}}); !strings.Contains(got, "follow the roads of the map data that are open") {
		t.Errorf("%q, want roads", got)
	}
	if got := wayCaution(nil, []Candidate{{}}); !strings.Contains(got, "are estimates") {
		t.Errorf("%q, want estimates", got)
	}
}

func TestWayCaution(t *testing.T) {
	days := func(byRoad ...bool) []Day {
		var d Day
		for _, b := range byRoad {
			d.Calls = append(d.Calls, Call{ByRoad: b})
		}
		return []Day{d}
	}
	for _, tc := range []struct {
		days []Day
		want string
	}{{nil, "are estimates"}, {days(false), "are estimates"}, {days(true, true), "follow the roads of the map data that are open"}, {days(true, false), "those that say estimate"}} {
		if got := wayCaution(tc.days, nil); !strings.Contains(got, tc.want) {
			t.Errorf("%v: %q, want %q", tc.days, got, tc.want)
		}
	}
}
