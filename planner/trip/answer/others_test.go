package answer

import (
	"math"
	"strings"
	"testing"
	"ullage/planner/trip/triptest"
)

// The other site is the other plan, 2 EUR dearer; the price of safety is said.
func TestOtherPlansAndSafety(t *testing.T) {
	tr, places := triptest.TwoWays("32 EUR")
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
