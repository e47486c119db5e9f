package solve

import (
	"context"
	"math"
	"testing"

	"ullage/planner"
	"ullage/planner/internal/model"
	"ullage/planner/internal/plantest"
)

// TestOutlook: what is seen of a visit before it is worked out is never above
// its bound afterwards.
func TestOutlook(t *testing.T) {
	t.Parallel()
	looked, sharp := 0, 0
	for name, p := range plantest.BoundProblems(t) {
		m := model.New(p)
		f := newFinder(m, func() bool { return false })
		for f.next() {
		}
		w := newSweep(m, f.best)
		w.stopped = func() bool { return false }
		w.limit, w.width, w.labels, w.ctx = math.Inf(1), 20, labels{m: m}, t.Context()
		w.begin()
		w.leaveOut()
		for i := range m.Stops {
			stop := &m.Stops[i]
			for _, id := range w.pool {
				w.labels.load(w.before, id)
				if !m.Arrive(w.before, int(w.labels.all[id].Stop), i) {
					continue
				}
				w.view.Look(&w.labels.all[id].Place, w.labels.handOf(id), w.labels.layersAll(id), i, w.labels.all[id].tankCost)
				view := w.view
				for _, night := range []bool{false, true} {
					for take := range uint32(1 << len(stop.Serves)) {
						w.then.CopyFrom(w.before)
						if night && !stop.Night || !night && take&stop.Guests != 0 || !m.Stay(w.then, i, model.Deed{Night: night, Take: take}) {
							continue
						}
						l := w.label(w.then, i)
						w.price(&l, w.then, i)
						seen := view.Least(model.Deed{Night: night, Take: take})
						if seen > l.bound {
							t.Fatalf("%s: stop %d, night %v, services %b: %v seen, the bound is %v", name, i, night, take, seen, l.bound)
						}
						looked++
						if seen > l.bound-0.5 {
							sharp++
						}
					}
				}
			}
			w.pass(i)
		}
	}
	if looked < 10_000 || sharp*2 < looked {
		t.Errorf("%d visits looked at, %d of them within 0.5 of the bound; want 10,000 and half of them", looked, sharp)
	}
}

// TestLeaveOut: nothing that a best plan does is left out at its cost, and much else is.
func TestLeaveOut(t *testing.T) {
	t.Parallel()
	out := 0
	for name, p := range plantest.BoundProblems(t) {
		plan, err := Solve(context.Background(), p, Options{})
		if err != nil || plan.Status != planner.Optimal {
			t.Fatalf("%s: %v, %v", name, plan.Status, err)
		}
		m := model.New(p)
		f := newFinder(m, func() bool { return false })
		f.next()
		w := newSweep(m, f.best)
		w.stopped = func() bool { return false }
		w.limit, w.lost, w.labels = plan.Cost*(1+1e-9), math.Inf(1), labels{m: m}
		w.begin()
		w.leaveOut()
		next := 0
		for i, s := range p.Stops {
			if next < len(plan.Visits) && s.ID == plan.Visits[next].Stop {
				for _, y := range plan.Visits[next].Serve {
					for k, z := range s.Serves {
						if z.Tank == y.Tank && (w.branches[i]|m.Stops[i].Settled)&(1<<k) == 0 {
							t.Errorf("%s: %s at %s is left out, the best plan takes it", name, y.Tank, s.ID)
						}
					}
				}
				next++
			} else if w.branches[i] != m.Stops[i].Branches {
				out++
			}
		}
		if w.lost < plan.Cost {
			t.Errorf("%s: what is left out can cost %v, less than the best plan, %v", name, w.lost, plan.Cost)
		}
	}
	if out == 0 {
		t.Error("nothing is ever left out")
	}
}
