package planner_test

import (
	"math"
	"slices"
	"testing"

	. "ullage/planner"
)

// TestAlternatives: the first is as cheap as brute force finds any plan
// without one of the stops; all are plans of the problem itself.
func TestAlternatives(t *testing.T) {
	checked := 0
	for seed := range uint64(120) {
		p := tiny(seed)
		if len(p.Stops) > 5 {
			continue // brute force solves several problems for each
		}
		plan := solve(t, p)
		got, err := Alternatives(t.Context(), p, plan, 2, Options{})
		if err != nil {
			t.Fatal(err)
		}
		want := math.Inf(1)
		for _, v := range plan.Visits {
			i := slices.IndexFunc(p.Stops, func(s Stop) bool { return s.ID == v.Stop })
			if !p.Stops[i].Required {
				q := *p
				q.Stops = slices.Delete(slices.Clone(p.Stops), i, i+1)
				want = min(want, brute(&q))
			}
		}
		if len(got) == 0 {
			if !math.IsInf(want, 1) {
				t.Errorf("seed %d: no alternative, want one for %v", seed, want)
			}
			continue
		}
		checked++
		if !near(got[0].Plan.Cost, want) || !near(got[0].Extra, want-plan.Cost) {
			t.Errorf("seed %d: first alternative costs %v, %v more; want %v", seed, got[0].Plan.Cost, got[0].Extra, want)
		}
		for _, a := range got {
			if a.Plan.Status != Optimal || slices.ContainsFunc(a.Plan.Visits, func(v Visit) bool { return v.Stop == a.Without }) {
				t.Errorf("seed %d: without %s: %s %v", seed, a.Without, a.Plan.Status, a.Plan.Visits)
			}
			again, err := Replay(p, a.Plan.Visits)
			if err != nil || !near(again.Cost, a.Plan.Cost) {
				t.Errorf("seed %d: replayed in the whole problem: %v, %v", seed, again.Cost, err)
			}
		}
	}
	if checked < 8 {
		t.Errorf("%d problems with alternatives, want more", checked)
	}
}
