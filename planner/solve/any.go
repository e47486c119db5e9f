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
	m := model.New(p)
	w := newSweep(m, bound.New(m, bound.Recipe{Worth: bound.Worths(m), Tanks: bound.BindingTanks(m), Detail: bound.Rough}))
	if math.IsInf(w.root(), 1) || w.run(ctx, math.Inf(1), narrow, math.MaxInt) != nil || w.best < 0 {
		return planner.Plan{}, false
	}
	plan, err := w.plan(w.best)
	return plan, err == nil
}
