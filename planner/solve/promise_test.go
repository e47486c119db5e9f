package solve_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"ullage/planner"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
	"ullage/planner/solve"
)

// manyWays is a stop with so many services that nobody looks at all ways to visit it.
func manyWays() *planner.Problem {
	p := plantest.Made{LengthKm: 300, Seed: 1}.Problem()
	var s *planner.Stop
	for i := range p.Stops {
		if len(p.Stops[i].Serves) == 1 && p.Stops[i].Serves[0].Tank == "diesel" {
			s = &p.Stops[i]
		}
	}
	for n := range 25 {
		id := fmt.Sprintf("t%d", n)
		p.Tanks = append(p.Tanks, planner.Tank{ID: id, Kind: planner.Supply, Capacity: 10, Start: 5, PerKm: 0.001})
		s.Serves = append(s.Serves, planner.Service{Tank: id, Price: 1})
		s.Serves[len(s.Serves)-1].Min = 1
	}
	return p
}

// TestCancel: whenever the context ends, hardly anything more is done (it is not
// asked again and again), and the answer is a plan or that nothing is known, never
// that there is none.
func TestCancel(t *testing.T) {
	t.Parallel()
	for name, p := range map[string]*planner.Problem{
		"plain":     plantest.Made{LengthKm: 300, Seed: 1}.Problem(),
		"restored":  plantest.Made{LengthKm: 500, Seed: 1, Battery: true}.Problem(),
		"hours":     plantest.Made{LengthKm: 500, Seed: 1, Open: true, Backup: true, Nights: 6}.Problem(),
		"stays":     plantest.Made{LengthKm: 100, Seed: 1, Stays: 9}.Problem(),
		"crowded":   plantest.Made{LengthKm: 300, Seed: 1, Dense: 50}.Problem(),
		"many ways": manyWays(),
	} {
		whole := plantest.Polls(20_000)
		if _, err := solve.Solve(whole, p, solve.Options{}); err != nil || whole.Asked < len(p.Stops)/2 {
			t.Errorf("%s: %v, asked %d times for %d stops", name, err, whole.Asked, len(p.Stops))
		}
		for n := 1; n < whole.Asked; n += 1 + n*2/3 {
			ctx := plantest.Polls(n)
			plan, err := solve.Solve(ctx, p, solve.Options{})
			if err != nil || plan.Status == planner.Infeasible {
				t.Errorf("%s, ended at %d of %d: %s, %v", name, n, whole.Asked, plan.Status, err)
			}
			if ctx.Asked > n+40 {
				t.Errorf("%s, ended at %d of %d: asked %d times more", name, n, whole.Asked, ctx.Asked-n)
			}
			if _, ok := solve.Any(plantest.Polls(3), p); ok {
				t.Errorf("%s: some plan after three looks at a context that has ended", name)
			}
		}
	}
}

// TestCrowded: among more stops than the tables have rows for, the answer is the
// plan that is the best of any few of them that it goes by.
func TestCrowded(t *testing.T) {
	t.Parallel()
	for seed, m := range []plantest.Made{{LengthKm: 600, Dense: 20}, {LengthKm: 900, Dense: 14, Backup: true}} {
		m.Seed = uint64(seed)
		p := m.Problem()
		plan := solved.Plan(t, p)
		if plan.Status != planner.Optimal {
			t.Errorf("%v: %d stops, %s", m, len(p.Stops), plan.Status)
		}
		g := rand.New(rand.NewPCG(m.Seed, 5))
		for range 4 {
			q := p.Clone()
			q.Stops = slices.DeleteFunc(q.Stops, func(s planner.Stop) bool {
				return g.IntN(len(p.Stops)) > 250 && !slices.ContainsFunc(plan.Visits, func(v planner.Visit) bool { return v.Stop == s.ID })
			})
			if some := solved.Plan(t, q); some.Status != planner.Optimal || !plantest.Near(some.Cost, plan.Cost) {
				t.Errorf("%v: %s for %v among %d stops, %v among %d", m, some.Status, some.Cost, len(q.Stops), plan.Cost, len(p.Stops))
			}
		}
	}
}
