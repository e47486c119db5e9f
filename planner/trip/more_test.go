package trip

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"ullage/planner"
)

// twoWays is 300 km with a night near the middle at one of two sites, the
// second for 32 EUR at first and the first for 30.
func twoWays(second string) (Trip, []Place) {
	tr := eastwards(300)
	tr.Day.MaxKm = 200
	tr.Vehicle.Tanks = slices.Clone(tr.Vehicle.Tanks)
	for i := range tr.Vehicle.Tanks {
		tr.Vehicle.Tanks[i].End = nil // nothing to hand back in a state
	}
	one, two := at("one", "campsite", 150, 0), at("two", "campsite", 160, 0)
	one.Stay, two.Stay = &Stay{HookUp: Yes, Charge: "30 EUR"}, &Stay{HookUp: Yes, Charge: second}
	return tr, []Place{one, two}
}

func mustPlan(t *testing.T, tr Trip, places []Place) Itinerary {
	t.Helper()
	it, err := Plan(t.Context(), tr, places, Options{})
	if err != nil {
		t.Fatal(err)
	}
	return it
}

// The other site is the other plan, 2 EUR dearer; the price of safety is said.
func TestOtherPlansAndSafety(t *testing.T) {
	tr, places := twoWays("32 EUR")
	it := mustPlan(t, tr, places)
	if len(it.Others) != 1 || math.Abs(it.Others[0].Extra-2) > 1e-6 || it.Others[0].Avoid != "one" {
		t.Fatalf("others = %+v, want two for 2 EUR more", it.Others)
	}
	o := it.Others[0]
	if want := "night at TWO instead of ONE"; o.Text != want {
		t.Errorf("text = %q, want %q", o.Text, want)
	}
	if got, want := strings.Join(o.Days, " | "), "Day 1: km 160 TWO (night) | Day 2: no stop"; got != want {
		t.Errorf("days = %q, want %q", got, want)
	}
	if want := "A plan that stays safe if a place is closed would cost nothing more."; it.Safety == nil || it.Safety.Text != want {
		t.Errorf("safety = %+v, want %q", it.Safety, want)
	}
	tr.Backup = true
	if it = mustPlan(t, tr, places); it.Safety == nil || it.Safety.Text != "Staying safe if a place is closed costs nothing more." {
		t.Errorf("safety = %+v", it.Safety)
	}
	tr.Avoid = []string{"one"} // as the other plan's button does
	if it = mustPlan(t, tr, places); strings.Join(it.Stops(), " ") != "two" {
		t.Errorf("without one it stops at %q", it.Stops())
	}
}

// A plan in use is kept while the other one is cheaper by no more than a per
// cent; the itinerary says that there is a cheaper one, and by how much.
func TestPlanInUseIsKept(t *testing.T) {
	for _, c := range []struct {
		fee  string
		want string
	}{{"29.90 EUR", "one"}, {"29 EUR", "two"}} {
		tr, places := twoWays(c.fee)
		if got := mustPlan(t, tr, places).Stops(); fmt.Sprint(got) != "[two]" {
			t.Fatalf("the cheapest stops at %v", got)
		}
		tr.Keep = []string{"one"}
		it := mustPlan(t, tr, places)
		if got := strings.Join(it.Stops(), " "); got != c.want {
			t.Errorf("at %s it goes to %s, want %s", c.fee, got, c.want)
		}
		if kept := c.want == "one"; kept != (it.Status == planner.Feasible) || kept && math.Abs(it.Cost-it.Bound-0.1) > 1e-6 {
			t.Errorf("at %s: %s, %v, bound %v", c.fee, it.Status, it.Cost, it.Bound)
		}
	}
}

// A trip without a plan is told what else would help, and each of that was tried.
func TestTripCures(t *testing.T) {
	tr, places := twoWays("32 EUR")
	tr.Stays.MinNights = 2 // 2 × 70 L of fresh water with showers aboard; 80 of 90 L may be used
	water := at("water", "water", 155, 7, yes("fresh"))
	dump := at("dump", "dump", 155, 7, yes("grey"), yes("cassette"))
	it := mustPlan(t, tr, append(places, water, dump))
	if it.Status != planner.Infeasible || len(it.Why) == 0 || it.Nearest == nil {
		t.Fatalf("%s, %+v, %+v", it.Status, it.Why, it.Nearest)
	}
	cures := strings.Join(it.Why[0].Cures, "\n")
	for _, want := range []string{"look twice as far beside the route: the trip then costs", "wash at the basin: the trip then costs"} {
		if !strings.Contains(cures, want) {
			t.Errorf("cures = %q, want %q", cures, want)
		}
	}
	tr.CorridorKm *= 2
	if it = mustPlan(t, tr, append(places, water, dump)); it.Status != planner.Optimal {
		t.Errorf("with a corridor twice as wide it is %s", it.Status)
	}
}
