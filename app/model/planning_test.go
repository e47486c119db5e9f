package model

import (
	"testing"

	"ullage/app/model/sample"
)

// What a better plan could save at most is never less than nothing.
func TestGap(t *testing.T) {
	for _, tc := range []struct{ cost, bound, want float64 }{{10, 8, 2}, {10, 9.5, 0.5}, {10, 10, 0}, {10, 11, 0}} {
		p := Planned{}
		if p.Plan.Cost, p.Plan.Bound = tc.cost, tc.bound; p.Gap() != tc.want {
			t.Errorf("a plan of %v, none below %v: %v to save, want %v", tc.cost, tc.bound, p.Gap(), tc.want)
		}
	}
}

// A plan in use is kept for the next visit.
func TestPlanInUseIsSaved(t *testing.T) {
	m := then(planned(), Afresh{})
	if got := todo[SaveTrip](m, Answered{No: m.Wanted, Plan: sample.Plan(), Last: true}); len(got) != 1 {
		t.Errorf("to save: %v", got)
	}
}

// A trip of one day has a plan to show.
func TestHasPlan(t *testing.T) {
	for days, want := range []bool{false, true, true} {
		p := Planned{Plan: sample.Plan()}
		if p.Plan.Days = p.Plan.Days[:days]; p.HasPlan() != want {
			t.Errorf("of %d days there is a plan: %v", days, p.HasPlan())
		}
	}
}

// The moment looked at stays within the plan that is shown.
func TestCursorStaysInThePlan(t *testing.T) {
	for _, tc := range []struct{ was, want float64 }{{0, 540}, {700, 700}, {9999, 3600}} {
		m := planned()
		m.Cursor = tc.was
		if m = then(m, Answered{No: m.Wanted, Plan: sample.Plan(), Last: true}); m.Cursor != tc.want {
			t.Errorf("looked at %v, with a new plan at %v, want %v", tc.was, m.Cursor, tc.want)
		}
	}
}
