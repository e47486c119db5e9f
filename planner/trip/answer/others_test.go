package answer

import (
	"math"
	"strings"
	"testing"
	"ullage/planner"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
	"ullage/planner/trip/triptest/built"
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

// What is different is said of the nights, and then of the number of stops.
func TestDifference(t *testing.T) {
	tr, places := triptest.TwoWays("32 EUR")
	b := asker{built.Trip(t, tr, places, build.Options{})}
	nights := func(ids ...string) (p planner.Plan) {
		for _, id := range ids {
			p.Visits = append(p.Visits, planner.Visit{Stop: id, Night: true})
		}
		return p
	}
	called := planner.Plan{Visits: []planner.Visit{{Stop: "one", Night: true}, {Stop: "two"}}}
	for _, c := range []struct {
		was, is planner.Plan
		want    string
	}{
		{nights("one"), nights("two"), "other.night_instead gone=[ONE] names=[TWO]"},
		{nights("one"), nights("one", "two"), "other.night_more names=[TWO] | other.stops n=2 was=1"},
		{nights("one", "two"), nights("two"), "other.night_less names=[ONE] | other.stops n=1 was=2"},
		{nights("one"), called, "other.stops n=2 was=1"},
		{nights("one", "two"), called, "other.night_less names=[TWO]"},
	} {
		if got := triptest.Lines(b.difference(c.was, c.is)); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
