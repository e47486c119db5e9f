package backup_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/backup"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
	"ullage/planner/solve"
)

func stopsOf(plan planner.Plan) []string {
	var out []string
	for _, v := range plan.Visits {
		out = append(out, v.Stop)
	}
	return out
}

func steady(t *testing.T, p *planner.Problem, use backup.Steady) planner.Plan {
	t.Helper()
	plan, err := backup.SolveSteady(t.Context(), p, use, solve.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if err := audit.Check(p, plan); err != nil {
		t.Error(err)
	}
	return plan
}

// TestSteadyTiny: after a change the plan costs at most what the tolerance
// allows over the optimum of brute force, and keeps to the stops in use
// wherever they allow a plan within it (brute force again).
func TestSteadyTiny(t *testing.T) {
	t.Parallel()
	const within = 0.05
	kept, moved := 0, 0
	for seed := range uint64(400) {
		p := plantest.Tiny(seed)
		if len(p.Stops) > 6 {
			continue
		}
		used := solved.Plan(t, p)
		if used.End == nil {
			continue
		}
		nudge(p, seed)
		plan := steady(t, p, backup.Steady{stopsOf(used), within})
		least := plantest.Brute(p)
		if math.IsInf(least, 1) != (plan.Status == planner.Infeasible) {
			t.Errorf("seed %d: %s, least cost %v", seed, plan.Status, least)
		}
		if plan.End == nil {
			continue
		}
		if plan.Cost > least*(1+within)+1e-6 || plan.Bound > least+1e-6 {
			t.Errorf("seed %d: costs %v, bound %v; least cost %v", seed, plan.Cost, plan.Bound, least)
		}
		if (plan.Status == planner.Optimal) != plantest.Near(plan.Cost, least) {
			t.Errorf("seed %d: %s at %v, least cost %v", seed, plan.Status, plan.Cost, least)
		}
		q := *p
		q.Stops = slices.DeleteFunc(slices.Clone(p.Stops), func(s planner.Stop) bool { return !s.Required && !slices.Contains(stopsOf(used), s.ID) })
		if plantest.Brute(&q) <= least*(1+within)-1e-6 {
			kept++
			for _, v := range plan.Visits {
				if !slices.ContainsFunc(q.Stops, func(s planner.Stop) bool { return s.ID == v.Stop }) {
					t.Errorf("seed %d: goes to %s, but what is in use costs little more", seed, v.Stop)
				}
			}
		} else {
			moved++
		}
	}
	t.Logf("%d kept, %d moved", kept, moved)
	if kept < 30 || moved < 5 {
		t.Error("want more to look at")
	}
}

// nudge is a small change: a price, a level, the length of a day.
func nudge(p *planner.Problem, seed uint64) {
	switch seed % 3 {
	case 0:
		for i := range p.Stops {
			for j := range p.Stops[i].Serves {
				p.Stops[i].Serves[j].Price *= 1 + 0.1*float64(int(seed+uint64(i))%3-1)
			}
			p.Stops[i].Fee += float64((seed + uint64(i)) % 2)
		}
	case 1:
		p.Tanks[0].Start = max(p.Tanks[0].Start-2, 3)
	case 2:
		p.Drive.MaxKmPerDay -= 8
	}
}

// TestSteadyDoesNotJump: while prices and fees move by a per cent or some cents, the plan
// of least cost goes to other stops now and then; the steady one less often,
// and it never costs more than 1 % above the least.
func TestSteadyDoesNotJump(t *testing.T) {
	t.Parallel()
	var used, cheapest []string
	jumps, steps := 0, 0
	count := func(was, is []string) int {
		return len(slices.DeleteFunc(slices.Clone(is), func(id string) bool { return slices.Contains(was, id) }))
	}
	for seed := range uint64(4) {
		used, cheapest = nil, nil
		for step := range 12 {
			p := plantest.Made{LengthKm: 500, Seed: seed + 1}.Problem()
			g := rand.New(rand.NewPCG(seed, uint64(step)))
			for i := range p.Stops {
				p.Stops[i].Fee += 0.4 * g.Float64()
				for j := range p.Stops[i].Serves {
					p.Stops[i].Serves[j].Price *= 1 + 0.01*g.Float64()
				}
			}
			best := solved.Plan(t, p)
			plan := steady(t, p, backup.Steady{used, 0.01})
			if best.End == nil {
				continue
			}
			if plan.Cost > best.Cost*1.01+1e-6 {
				t.Errorf("step %d: costs %v, least %v", step, plan.Cost, best.Cost)
			}
			if used != nil {
				steps += count(cheapest, stopsOf(best))
				jumps += count(used, stopsOf(plan))
			}
			used, cheapest = stopsOf(plan), stopsOf(best)
		}
	}
	t.Logf("the cheapest plan went to %d new stops, the steady one to %d", steps, jumps)
	if steps < 10 || jumps > steps/2 {
		t.Error("want a steady plan to change less often")
	}
}

// Without a plan in use, and with stops that are no more, it is Solve.
func TestSteadyOfNothing(t *testing.T) {
	p := plantest.ReadCase(t, "t1")
	for _, use := range []backup.Steady{{}, {Stops: []string{"gone"}, Within: 0.01}} {
		if plan := steady(t, p, use); plan.Status != planner.Optimal || !plantest.Near(plan.Cost, 282.3296) {
			t.Errorf("%s %v, want the optimum 282.3296", plan.Status, plan.Cost)
		}
	}
}
