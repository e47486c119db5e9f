package main

import (
	"context"

	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/reason"
	"ullage/planner/solve"
)

// answerTo is [solve.Solve] and what a person asks next: where there is no
// plan, the reasons in Why, and the nearest; where backup is wished for, a plan
// that survives closures as [backup.Survive] finds it, with the fallbacks in its
// visits. What ctx leaves no time for is left out. The plan is audited.
func answerTo(ctx context.Context, p *planner.Problem) (planner.Plan, *reason.Nearest, error) {
	var plan planner.Plan
	var closures []backup.Closure
	var err error
	if p.Backup {
		plan, closures, err = backup.Survive(ctx, p, p, backup.Steady{}, solve.Options{})
	} else {
		plan, err = solve.Solve(ctx, p, solve.Options{})
	}
	if err != nil || plan.End != nil {
		return backup.WithFallbacks(plan, closures), nil, err
	}
	why, nearest, err := reason.Refuse(ctx, p, plan, solve.Options{}, nil)
	if len(why) > 0 {
		plan.Why = why
	}
	return plan, nearest, err
}
