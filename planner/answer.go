package planner

import "context"

// Answer is [Solve] and what a person asks next: where there is no plan, the
// reasons of [Explain] in Why, and the [Nearest]; where backup is wished for,
// a plan that survives closures as [Survive] finds it, with the fallbacks in
// its visits. What ctx leaves no time for is left out.
//
// As for [Solve], the plan has passed [Audit]. opt.Progress sees plans
// without fallbacks.
func Answer(ctx context.Context, p *Problem, opt Options) (Plan, *Nearest, error) {
	if p.Backup {
		plan, closures, err := Survive(ctx, p, p, Steady{}, opt)
		if err != nil || plan.End != nil {
			return WithFallbacks(plan, closures), nil, err
		}
		return explained(ctx, p, plan, opt)
	}
	plan, err := Solve(ctx, p, opt)
	if err != nil {
		return Plan{}, nil, err
	}
	return explained(ctx, p, plan, opt)
}

func explained(ctx context.Context, p *Problem, plan Plan, opt Options) (Plan, *Nearest, error) {
	why, nearest, err := Refuse(ctx, p, plan, opt, nil)
	if len(why) > 0 {
		plan.Why = why
	}
	return plan, nearest, err
}
