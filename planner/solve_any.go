package planner

import (
	"context"
	"math"
)

// anyPlan is some plan, if a narrow sweep finds one: a quick answer where the
// cost does not matter. That it finds none proves nothing.
func anyPlan(ctx context.Context, p *Problem) (Plan, bool) {
	m := newModel(p)
	w := newSweep(m, newBounds(m, recipe{worth: m.worths(), tanks: m.bindingTanks(), detail: rough}))
	if math.IsInf(w.root(), 1) || w.run(ctx, math.Inf(1), narrow, math.MaxInt) != nil || w.best < 0 {
		return Plan{}, false
	}
	plan, err := w.plan(w.best)
	return plan, err == nil
}
