package read

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"ullage/planner"
	"ullage/planner/replay"
	"ullage/planner/solve"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
)

// TestHereIsTrue: whatever is said of a stop holds, looked at the slow way: the trip
// without the service breaks the tank that is named, and no other place of the data
// serves it on the stretch that is named.
func TestHereIsTrue(t *testing.T) {
	seen := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		tr := triptest.Eastwards(600)
		tr.Vehicle = rapid.SampledFrom(trip.Fleet()).Draw(t, "vehicle")
		tr.Stays.MinNights = rapid.IntRange(2, 5).Draw(t, "nights")
		tr.Levels = map[string]float64{"diesel": 20, "grey": 45, "cassette": 9, "fresh": 30}
		var places []trip.Place
		for i := range 40 {
			kind := rapid.SampledFrom([]trip.PlaceKind{"fuel", "dump", "stopover", "campsite"}).Draw(t, "kind")
			p := triptest.At(fmt.Sprintf("n%d", i), kind, rapid.Float64Range(1, 599).Draw(t, "km"), 1)
			for _, tank := range trip.TankIDs() {
				if tank != "battery" && rapid.IntRange(0, 9).Draw(t, tank) > 0 && (kind == "fuel") == (trip.KindOfTank(tank).Price > 0) {
					p.Offers = append(p.Offers, triptest.Yes(tank))
				}
			}
			if kind == "stopover" {
				p.Offers = nil
			}
			if kind == "stopover" || kind == "campsite" {
				p.Stay = &trip.Stay{HookUp: trip.Yes}
			}
			places = append(places, p)
		}
		b, err := build.Trip(tr, places, build.Options{})
		if err != nil {
			t.Fatal(err)
		}
		plan, err := solve.Solve(context.Background(), b.Problem, solve.Options{MaxLabels: 500})
		if err != nil || plan.End == nil {
			return
		}
		it := Itinerary(b, plan, nil)
		n := 0
		for _, d := range it.Days {
			for _, c := range d.Calls {
				seen[string(c.Here.Kind)]++
				tank := c.Here.Values["tank"].Unit
				switch c.Here.Kind {
				case hereOut, hereFull, hereAgreed:
					visits := make([]planner.Visit, len(plan.Visits))
					for i, v := range plan.Visits {
						visits[i] = planner.Visit{Stop: v.Stop, Night: v.Night, Serve: slices.Clone(v.Serve)}
					}
					visits[n].Serve = slices.DeleteFunc(visits[n].Serve, func(y planner.Serve) bool { return y.Tank == tank })
					visits, err := replay.WasteAmounts(b.Problem, visits)
					if err == nil {
						_, err = replay.Plan(b.Problem, visits)
					}
					var broken *planner.Broken
					if !errors.As(err, &broken) || broken.Tank != tank {
						t.Errorf("%s, %s: without it %v", c.Stop, triptest.Line(c.Here), err)
					}
				case hereNone, hereLast:
					to := it.LengthKm
					if c.Here.Kind == hereNone {
						to = c.Km + c.Here.Values["km"].N - 1
					}
					for _, o := range it.Places {
						if o.Place != c.Place && o.Excluded == nil && o.Km >= c.Km && o.Km < to && slices.Contains(o.Tanks, tank) {
							t.Errorf("%s, %s: %s at km %v", c.Stop, triptest.Line(c.Here), o.Stop, o.Km)
						}
					}
				case "":
					t.Errorf("%s: nothing is said", c.Stop)
				}
				n++
			}
		}
	})
	t.Log(seen)
	if seen[string(hereOut)]+seen[string(hereFull)] < 10 || seen[string(hereNone)]+seen[string(hereLast)] < 5 {
		t.Error("want more to look at")
	}
}
