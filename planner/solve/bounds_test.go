package solve

import (
	"context"
	"math"
	"testing"

	"ullage/planner"
	"ullage/planner/internal/bound"
	"ullage/planner/internal/model"
	"ullage/planner/internal/plantest"
)

// boundAlong visits the stops of a plan of the problem, and reports where the
// bound is above what the plan costs in the end: then it is wrong.
func boundAlong(t *testing.T, m *model.Model, b *bound.Bounds, plan planner.Plan) {
	t.Helper()
	w := newSweep(m, b)
	w.limit, w.labels = math.Inf(1), labels{m: m}
	w.begin()
	id, next := int32(0), 0
	for i := range m.Stops {
		if next < len(plan.Visits) && m.Problem.Stops[i].ID == plan.Visits[next].Stop {
			v := plan.Visits[next]
			next++
			id = w.follow(t, id, i, v)
		} else {
			w.skip(id, i)
		}
		if l := &w.labels.all[id]; l.bound > plan.Cost+1e-6*(1+plan.Cost) {
			t.Fatalf("group %v, worth %v: bound %v after stop %d of %d, the plan costs %v", b.Nights.Tanks, b.Worth, l.bound, i, len(m.Stops), plan.Cost)
		}
	}
}

// follow makes one visit of a plan.
func (w *sweep) follow(t *testing.T, id int32, i int, v planner.Visit) int32 {
	t.Helper()
	m, stop := w.m, &w.m.Stops[i]
	take := uint32(0)
	for k, y := range stop.Serves {
		if stop.Settled&(1<<k) != 0 && (v.Night || !y.Guests) {
			take |= 1 << k
		}
		for _, s := range v.Serve {
			if s.Tank == m.Problem.Tanks[y.Tank].ID {
				take |= 1 << k
			}
		}
	}
	w.labels.load(w.before, id)
	if !m.Arrive(w.before, int(w.labels.all[id].Stop), i) {
		t.Fatalf("cannot arrive at stop %d of the plan", i)
	}
	s := w.then
	s.CopyFrom(w.before)
	if !m.Stay(s, i, model.Deed{Night: v.Night, Take: take}) {
		t.Fatalf("cannot visit stop %d of the plan", i)
	}
	l := w.label(s, i)
	l.parent, l.Deed = id, model.Deed{Night: v.Night, Take: take}
	w.price(&l, s, i)
	return w.labels.add(l, s)
}

// TestBoundsAlongBestPlans: no bounds that the solver may choose are above the
// cost of a best plan, anywhere along it.
func TestBoundsAlongBestPlans(t *testing.T) {
	t.Parallel()
	for file, p := range plantest.BoundProblems(t) {
		plan, err := Solve(context.Background(), p, Options{})
		if err != nil || plan.Status != planner.Optimal {
			t.Fatalf("%s: %v, %v", file, plan.Status, err)
		}
		m := model.New(p)
		f := newFinder(m, func() bool { return false })
		for range 3 {
			f.next()
			boundAlong(t, m, f.best, plan)
		}
		all := bound.BindingTanks(m)
		for set := range 1 << len(all) {
			var group []int
			for k, tank := range all {
				if set>>k&1 == 1 {
					group = append(group, tank)
				}
			}
			for _, worth := range [][]float64{bound.Worths(m), f.best.Worth} {
				boundAlong(t, m, bound.New(m, bound.Recipe{Worth: worth, Tanks: group, Nights: f.later, Detail: bound.Fine}), plan)
				boundAlong(t, m, bound.New(m, bound.Recipe{Worth: worth, Tanks: group, Nights: f.later, Detail: bound.Detail{Row: 12, Tank: 48, Moving: 50}}), plan)
				boundAlong(t, m, bound.New(m, bound.Recipe{Worth: worth, Tanks: group, Nights: bound.Tally{Wage: 3}, Detail: bound.Rough}), plan)
			}
		}
	}
}
