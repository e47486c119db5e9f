package planner

import (
	"context"
	"math"
	"testing"
)

// boundAlong visits the stops of a plan of the problem, and reports where the
// bound is above what the plan costs in the end: then it is wrong.
func boundAlong(t *testing.T, m *model, b *bounds, plan Plan) {
	t.Helper()
	w := newSweep(m, b)
	w.limit, w.labels = math.Inf(1), labels{m: m}
	w.begin()
	id, next := int32(0), 0
	for i := range m.stops {
		if next < len(plan.Visits) && m.p.Stops[i].ID == plan.Visits[next].Stop {
			v := plan.Visits[next]
			next++
			id = w.follow(t, id, i, v)
		} else {
			w.skip(id, i)
		}
		if l := &w.labels.all[id]; l.bound > plan.Cost+1e-6*(1+plan.Cost) {
			t.Fatalf("group %v, worth %v: bound %v after stop %d of %d, the plan costs %v", b.nights.tanks, b.worth, l.bound, i, len(m.stops), plan.Cost)
		}
	}
}

// follow makes one visit of a plan.
func (w *sweep) follow(t *testing.T, id int32, i int, v Visit) int32 {
	t.Helper()
	m, stop := w.m, &w.m.stops[i]
	take := uint32(0)
	for k, y := range stop.serves {
		if stop.settled&(1<<k) != 0 && (v.Night || !y.guests) {
			take |= 1 << k
		}
		for _, s := range v.Serve {
			if s.Tank == m.p.Tanks[y.tank].ID {
				take |= 1 << k
			}
		}
	}
	w.labels.load(w.before, id)
	if !m.arrive(w.before, int(w.labels.all[id].stop), i) {
		t.Fatalf("cannot arrive at stop %d of the plan", i)
	}
	s := w.then
	s.copyFrom(w.before)
	if !m.stay(s, i, v.Night, take) {
		t.Fatalf("cannot visit stop %d of the plan", i)
	}
	l := w.label(s, i)
	l.parent, l.night, l.take = id, v.Night, take
	w.price(&l, s, i)
	return w.labels.add(l, s)
}

// TestBoundsAlongBestPlans: no bounds that the solver may choose are above the
// cost of a best plan, anywhere along it.
func TestBoundsAlongBestPlans(t *testing.T) {
	for file, p := range boundProblems(t) {
		plan, err := Solve(context.Background(), p, Options{})
		if err != nil || plan.Status != Optimal {
			t.Fatalf("%s: %v, %v", file, plan.Status, err)
		}
		m := newModel(p)
		f := newFinder(m, func() bool { return false })
		for range 3 {
			f.next()
			boundAlong(t, m, f.best, plan)
		}
		all := m.bindingTanks()
		for set := range 1 << len(all) {
			var group []int
			for k, tank := range all {
				if set>>k&1 == 1 {
					group = append(group, tank)
				}
			}
			for _, worth := range [][]float64{m.worths(), f.best.worth} {
				boundAlong(t, m, newBounds(m, recipe{worth: worth, tanks: group, nights: f.later, detail: fine}), plan)
				boundAlong(t, m, newBounds(m, recipe{worth: worth, tanks: group, nights: f.later, detail: detail{row: 12, tank: 48, moving: 50}}), plan)
				boundAlong(t, m, newBounds(m, recipe{worth: worth, tanks: group, nights: tally{wage: 3}, detail: rough}), plan)
			}
		}
	}
}
