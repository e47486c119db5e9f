package backup

import (
	"context"
	"fmt"
	"slices"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/replay"
	"ullage/planner/solve"
)

// Steady is how far a plan in use is stayed with. The zero value is not at all.
type Steady struct {
	Stops  []string // that the plan in use visits; those that the problem does not have are left out
	Within float64  // share of the proven bound that staying may cost more, ≥ 0
}

// SolveSteady is [solve.Solve] for a trip whose plan is in use: after a small change
// the same stops are kept as far as that costs no more than use.Within above
// what is proven that any plan costs. In this order, the answer is
//
//  1. the cheapest plan that visits none but stops in use,
//  2. a plan with fewer new stops than the cheapest,
//  3. the cheapest plan,
//
// whichever first is within that. The bound is that of all plans of p, so the
// answer says what staying can cost; a plan kept is [planner.Optimal] only if nothing
// is cheaper. A plan of the first kind is found and shown within milliseconds,
// and other plans are not shown before it is known whether they replace it.
// The whole takes up to twice the time of Solve.
func SolveSteady(ctx context.Context, p *planner.Problem, use Steady, opt solve.Options) (planner.Plan, error) {
	if err := p.Validate(); err != nil {
		return planner.Plan{}, err
	}
	if why := planner.Shortfall(p); len(why) > 0 {
		return planner.Plan{Format: planner.PlanFormat, Status: planner.Infeasible, Why: why}, nil
	}
	if len(use.Stops) == 0 {
		return solve.Solve(ctx, p, opt)
	}
	show := opt.Progress
	opt.Progress = nil
	kept, err := solve.Solve(ctx, with(p, use.keeps), opt)
	if err != nil {
		return planner.Plan{}, err
	}
	if kept.Status, kept.Bound = planner.Feasible, 0; kept.End == nil {
		opt.Progress = show
	} else if show != nil {
		show(kept)
	}
	best, err := solve.Solve(ctx, p, opt)
	opt.Progress = nil
	if err != nil || best.End == nil && kept.End == nil {
		return best, err
	}
	out, err := use.steadiest(ctx, p, kept, best, opt)
	if err != nil {
		return planner.Plan{}, err
	}
	out = bounded(out, best.Bound)
	if err := audit.Check(p, out); err != nil {
		return planner.Plan{}, fmt.Errorf("planner: a steady plan is invalid: %w", err)
	}
	if show != nil {
		show(out)
	}
	return out, nil
}

// steadiest is the first of three plans that costs little enough: the one kept, one
// with fewer new stops than the best, the best.
func (use Steady) steadiest(ctx context.Context, p *planner.Problem, kept, best planner.Plan, opt solve.Options) (planner.Plan, error) {
	most := max(best.Cost, best.Bound*(1+use.Within))
	more := use.fresh(best)
	switch {
	case kept.End != nil && (best.End == nil || kept.Cost <= most):
		return kept, nil
	case more == 0 || best.Bound <= 0:
		return best, nil
	}
	few, err := use.fewer(ctx, p, use.Within*best.Bound/float64(more), opt)
	if err == nil && few.End != nil && few.Cost <= most && use.fresh(few) < more {
		return few, nil
	}
	return best, err
}

// bounded is a plan with what is proven of it: no plan costs less than bound.
func bounded(plan planner.Plan, bound float64) planner.Plan {
	plan.Bound, plan.Status = max(0, min(bound, plan.Cost)), planner.Feasible
	if plan.Cost-plan.Bound <= 1e-6*plan.Cost {
		plan.Status = planner.Optimal
	}
	return plan
}

// keeps is true for stops that cost nothing new.
func (use Steady) keeps(s planner.Stop) bool { return s.Required || slices.Contains(use.Stops, s.ID) }

// fresh counts the visits to stops that are not in use.
func (use Steady) fresh(plan planner.Plan) int {
	n := 0
	for _, v := range plan.Visits {
		if !slices.Contains(use.Stops, v.Stop) {
			n++
		}
	}
	return n
}

// fewer finds a plan that visits a new stop only if that saves more than price.
func (use Steady) fewer(ctx context.Context, p *planner.Problem, price float64, opt solve.Options) (planner.Plan, error) {
	q := p.Clone()
	for i := range q.Stops {
		if !use.keeps(q.Stops[i]) {
			q.Stops[i].Fee += price
		}
	}
	plan, err := solve.Solve(ctx, q, opt)
	if err != nil || plan.End == nil {
		return planner.Plan{}, err
	}
	return replay.Plan(p, plan.Visits)
}

// with is p with some of its stops.
func with(p *planner.Problem, keep func(planner.Stop) bool) *planner.Problem {
	q := *p
	q.Stops = slices.DeleteFunc(slices.Clone(p.Stops), func(s planner.Stop) bool { return !keep(s) })
	return &q
}
