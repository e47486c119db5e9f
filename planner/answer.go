package planner

import "context"

// Answer is [Solve] and what a person asks next: where there is no plan, the
// reasons of [Explain] in Why; where backup is wished for, the fallbacks of
// [Closures] in the visits. What ctx leaves no time for is left out.
//
// As for [Solve], the answer has passed [Audit]. opt.Progress sees plans
// without fallbacks.
func Answer(ctx context.Context, p *Problem, opt Options) (Plan, error) {
	plan, err := Solve(ctx, p, opt)
	if err != nil {
		return Plan{}, err
	}
	switch {
	case plan.Status == Infeasible:
		why, _, err := Refuse(ctx, p, plan, opt, nil)
		if err != nil {
			return Plan{}, err
		}
		if len(why) > 0 {
			plan.Why = why
		}
	case plan.End != nil && p.Backup:
		plan = WithFallbacks(plan, Closures(p, plan))
	}
	return plan, nil
}
