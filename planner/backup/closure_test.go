package backup_test

import (
	"slices"
	"testing"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/backup"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
)

// TestClosuresOfT1 closes every stop of the worked case T1. Known of it from two
// MILP solvers and another simulator: in the plan without backup all five
// service stops are single points of failure; with backup, and 1.44 L more
// to hand back for the way to a fallback, every closure is survived.
func TestClosuresOfT1(t *testing.T) {
	p := plantest.ReadCase(t, "t1")
	var fatal []string
	for _, c := range backup.Closures(p, solved.Plan(t, p)) {
		t.Logf("nominal: %s survived %v %v %v", c.Stop, c.Survived, c.Fallback, c.Err)
		if !c.Survived {
			fatal = append(fatal, c.Stop)
		}
	}
	if want := []string{"P3", "P5", "P7", "P8", "P9"}; !slices.Equal(fatal, want) {
		t.Errorf("not survived: %v, want %v", fatal, want)
	}

	plantest.WithSpare(p)
	backed := plantest.ReadCase(t, "t1")
	plantest.WithSpare(backed)
	backed.Tanks[0].End.AtLeast = plantest.Number(51.44)
	plan := solved.Plan(t, backed)
	for _, c := range backup.Closures(p, plan) {
		t.Logf("backup: %s survived %v %v %v", c.Stop, c.Survived, c.Fallback, c.Err)
		if !c.Survived || c.LongDay {
			t.Errorf("closure of %s: %v", c.Stop, c.Err)
		}
	}
}

// TestClosuresAreDriven: whatever is said to survive passes the auditor, keeps
// away from what is closed, and is the old plan up to the closure.
func TestClosuresAreDriven(t *testing.T) {
	t.Parallel()
	survived := 0
	for seed := range uint64(200) {
		p := plantest.Tiny(seed)
		plan := solved.Plan(t, p)
		closures := backup.Closures(p, plan)
		for i, c := range closures {
			if !c.Survived {
				if c.Err == nil {
					t.Errorf("seed %d: closure of %s is not survived for no reason", seed, c.Stop)
				}
				continue
			}
			survived++
			if err := audit.Check(c.Problem, c.Plan); err != nil {
				t.Errorf("seed %d: closure of %s: %v", seed, c.Stop, err)
			}
			for j, v := range c.Plan.Visits[:i+1] {
				if v.Stop != plan.Visits[j].Stop || j == i && (v.Night || len(v.Serve) > 0) {
					t.Errorf("seed %d: closure of %s changes what was before: %v", seed, c.Stop, v)
				}
			}
		}
		if err := audit.Check(p, backup.WithFallbacks(plan, closures)); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
	}
	if survived < 40 {
		t.Errorf("%d closures survived, want more to look at", survived)
	}
}

// TestClosedSite: stops of one site close together.
func TestClosedSite(t *testing.T) {
	p := &planner.Problem{
		Format: planner.ProblemFormat, LengthKm: 200,
		Drive: planner.Drive{MaxKmPerDay: 300, MaxMinPerDay: 600, Pace: []planner.Pace{{ToKm: 200, MinPerKm: 1}}},
		Tanks: []planner.Tank{{ID: "fuel", Kind: planner.Supply, Capacity: 30, Reserve: 3, Start: 13, PerKm: 0.1}},
		Stops: []planner.Stop{
			{ID: "a", Km: 80, Site: "x", Serves: []planner.Service{{Tank: "fuel", Price: 1}}},
			{ID: "b", Km: 81, Site: "x", Serves: []planner.Service{{Tank: "fuel", Price: 2}}},
			{ID: "c", Km: 120, Serves: []planner.Service{{Tank: "fuel", Price: 3}}},
		},
	}
	got := backup.Closures(p, solved.Plan(t, p))
	if len(got) != 1 || !got[0].Survived || got[0].Fallback["fuel"] != "c" {
		t.Errorf("%+v, want c as the fallback of a", got)
	}
	p.Stops[0].Site, p.Stops[1].Site = "", ""
	p.Stops[0].Operator, p.Stops[1].Operator = "o", "o"
	if got := backup.Closures(p, solved.Plan(t, p)); len(got) != 1 || got[0].Fallback["fuel"] != "c" {
		t.Errorf("%+v, want c as the fallback of a: b has the same operator", got)
	}
	p.Stops[1].Operator = ""
	if got := backup.Closures(p, solved.Plan(t, p)); len(got) != 1 || got[0].Fallback["fuel"] != "b" {
		t.Errorf("%+v, want b as the fallback of a", got)
	}
	p.Stops[1].Operator = "o"
	p.Stops = p.Stops[:2]
	if got := backup.Closures(p, solved.Plan(t, p)); len(got) != 1 || got[0].Survived {
		t.Errorf("%+v, want no way on", got)
	}
}

func BenchmarkClosures(b *testing.B) {
	p := plantest.Made{LengthKm: 1000, Seed: 1, Backup: true}.Problem()
	plan := solved.Plan(b, p)
	b.ReportAllocs()
	for b.Loop() {
		if got := backup.Closures(p, plan); len(got) == 0 {
			b.Fatal("nothing to close")
		}
	}
}
