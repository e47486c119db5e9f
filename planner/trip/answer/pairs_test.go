package answer

import (
	"strings"
	"testing"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/internal/plantest"
	"ullage/planner/trip"
	"ullage/planner/trip/triptest"
)

// twice is 300 km with one site in the middle, 10 km farther than a day, and the
// place for the cassette out of the corridor: two things stand in the way.
func twice() (trip.Trip, []trip.Place) {
	tr := triptest.Eastwards(300)
	tr.Vehicle, tr.Day.MaxKm, tr.Day.MaxMin = withoutBattery(tr.Vehicle), 140, 200 // the night is forced by the time, however far one may drive
	site := triptest.At("site", "campsite", 150, 0, triptest.Yes("diesel"), triptest.Yes("fresh"), triptest.Yes("grey"), trip.Offer{Tank: "cassette", Answer: trip.No})
	site.Stay = &trip.Stay{Fee: trip.No}
	return tr, []trip.Place{site, triptest.At("dump", trip.Disposal, 160, 7, triptest.Yes("cassette"))}
}

// Where no change helps alone, two together are tried, and each pair is true.
func TestCuresInPairs(t *testing.T) {
	tr, places := twice()
	it := refused(t, tr, places)
	pairs := 0
	for _, c := range it.Cures {
		if list := c.Values["what"].List; len(list) == 2 {
			pairs++
			continue
		}
		t.Errorf("%s helps alone", triptest.Line(c))
	}
	if pairs == 0 || !it.Tried.Nothing() {
		t.Fatalf("no pair, %s", triptest.Line(it.Tried))
	}
	// A corridor of 10 km, and 150 km to the site with the 19.6 to the disposal point and back (7 km × 1.4, twice): 30 km more.
	for _, c := range it.Cures {
		list := c.Values["what"].List
		if list[0].Fact.Kind != cureCorridor || list[1].Fact.Kind != planner.ChangeDayKm {
			continue
		}
		km := list[1].Fact.Values["km"].N
		for more, want := range map[float64]planner.Status{km: planner.Optimal, km - 1: planner.Infeasible} {
			tr := tr
			tr.CorridorKm, tr.Day.MaxKm = 10, 140+more
			if got := mustPlan(t, tr, places); got.Status != want {
				t.Errorf("with %v km more: %s, want %s", more, got.Status, want)
			}
		}
		return
	}
	t.Errorf("no corridor with a longer day in %q", triptest.Lines(it.Cures))
}

// What the person just touched is tried before all else: it is the first that is told.
func TestTouchedFirst(t *testing.T) {
	tr, places := triptest.TwoWays("32 EUR")
	tr.Stays.MinNights = 2
	water := triptest.At("water", "water", 155, 7, triptest.Yes("fresh"))
	dump := triptest.At("dump", "dump", 155, 7, triptest.Yes("grey"), triptest.Yes("cassette"))
	places = append(places, water, dump)
	for field, want := range map[string]fact.Kind{"showers": cureShowersSite, "corridor": cureCorridor} {
		it, err := Trip(t.Context(), tr, places, Options{Touched: []string{field}})
		if err != nil || len(it.Cures) == 0 || it.Cures[0].Values["what"].List[0].Fact.Kind != want {
			t.Errorf("%s touched: %v, cures %q", field, err, triptest.Lines(it.Cures))
		}
	}
}

// Where time runs out before all was tried, that is said, and nothing is called impossible.
func TestTimeRunsOutBeforeAllIsTried(t *testing.T) {
	tr, places := twice()
	whole := plantest.Polls(1 << 40)
	all, err := Trip(whole, tr, places, Options{})
	if err != nil {
		t.Fatal(err)
	}
	for n := 1; n < whole.Asked; n += 1 + whole.Asked/30 {
		it, err := Trip(plantest.Polls(n), tr, places, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if it.Status != planner.Infeasible {
			continue // no time to prove it
		}
		if it.Tried.Kind != triedCut && len(it.Cures) < len(all.Cures) || len(it.Why) == 0 {
			t.Errorf("cut at %d of %d: %q, %d reasons", n, whole.Asked, triptest.Line(it.Tried), len(it.Why))
		}
		for _, c := range it.Cures {
			if !fact.Contains(all.Cures, c) {
				t.Errorf("cut at %d of %d: %q is no cure", n, whole.Asked, triptest.Line(c))
			}
		}
	}
}

// Where everything was tried in vain, that is said, with how much.
func TestTriedInVain(t *testing.T) {
	tr, places := twice()
	tr.Vehicle.Tanks[0].Reserve, tr.Levels = 70, map[string]float64{"diesel": 75} // 5 L and 75 L hold no 150 km
	for i := range places {
		places[i].Offers = nil
	}
	it := refused(t, tr, places)
	if it.Tried.Kind != triedAll && it.Tried.Kind != triedSome || it.Tried.Values["n"].N < 10 || strings.Contains(cured(it), "cure.then") {
		t.Errorf("%s, cures %s", triptest.Line(it.Tried), cured(it))
	}
}
