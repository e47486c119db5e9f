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
	if got, want := triptest.Lines(o.Says), "other.night_instead gone=[ONE] names=[TWO]"; got != want {
		t.Errorf("differs by %q, want %q", got, want)
	}
	if got, want := triptest.Lines(o.Days), "line.day calls=[(line.call does=[(line.night nights=1)] mark=km160 name=TWO)] n=1 | line.none n=2"; got != want {
		t.Errorf("days = %q, want %q", got, want)
	}
	if want := "safety.would n=0"; it.Safety == nil || triptest.Line(it.Safety.Says) != want {
		t.Errorf("safety = %+v, want %q", it.Safety, want)
	}
	tr.Backup = true
	if it = mustPlan(t, tr, places); it.Safety == nil || triptest.Line(it.Safety.Says) != "safety.costs n=0" {
		t.Errorf("safety = %+v", it.Safety)
	}
	tr.Avoid = []string{"one"} // as the other plan's button does
	if it = mustPlan(t, tr, places); strings.Join(it.Stops(), " ") != "two" {
		t.Errorf("without one it stops at %q", it.Stops())
	}
}
