package solve

import (
	"context"
	"math"

	"ullage/planner"
	"ullage/planner/internal/bound"
	"ullage/planner/internal/model"
)

// Any is some plan, if a narrow sweep finds one: a quick answer where the
// cost does not matter. That it finds none proves nothing.
func Any(ctx context.Context, p *planner.Problem) (planner.Plan, bool) {
	w := glimpse(ctx, model.New(thin(p)))
	if w == nil {
		return planner.Plan{}, false
	}
	plan, err := w.plan(w.best)
	return plan, err == nil
}

// glimpse is one narrow sweep; nil if it found no plan.
func glimpse(ctx context.Context, m *model.Model) *sweep {
	stopped := func() bool { return ctx.Err() != nil }
	b := bound.New(m, bound.Recipe{Worth: bound.Worths(m), Tanks: bound.BindingTanks(m), Detail: bound.Rough, Stopped: stopped})
	if b == nil {
		return nil
	}
	w := newSweep(m, b)
	if math.IsInf(w.root(), 1) || w.run(ctx, math.Inf(1), narrow, usualLabels) != nil || w.best < 0 {
		return nil
	}
	return w
}
