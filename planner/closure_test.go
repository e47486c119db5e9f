package planner_test

import (
	"slices"
	"testing"

	. "ullage/planner"
)

// TestClosuresOfT1 closes every stop of the worked case T1. Known of it from two
// MILP solvers and another simulator: in the plan without backup all five
// service stops are single points of failure; with backup, and 1.44 L more
// to hand back for the way to a fallback, every closure is survived.
func TestClosuresOfT1(t *testing.T) {
	p := readCase(t, "t1")
	var fatal []string
	for _, c := range Closures(p, solve(t, p)) {
		t.Logf("nominal: %s survived %v %v %v", c.Stop, c.Survived, c.Fallback, c.Err)
		if !c.Survived {
			fatal = append(fatal, c.Stop)
		}
	}
	if want := []string{"P3", "P5", "P7", "P8", "P9"}; !slices.Equal(fatal, want) {
		t.Errorf("not survived: %v, want %v", fatal, want)
	}

	withSpare(p)
	backed := readCase(t, "t1")
	withSpare(backed)
	backed.Tanks[0].End.AtLeast = number(51.44)
	plan := solve(t, backed)
	for _, c := range Closures(p, plan) {
		t.Logf("backup: %s survived %v %v %v", c.Stop, c.Survived, c.Fallback, c.Err)
		if !c.Survived {
			t.Errorf("closure of %s: %v", c.Stop, c.Err)
		}
	}
}
