package trip

import (
	"context"
	"fmt"

	"ullage/planner"
)

// Plan makes a trip into a problem, solves it, has the answer audited and
// reads it back. Better plans found on the way go to opt.Progress, audited as
// well. If ctx ends first, the best plan so far comes back with a status that
// says how far it can be off; if there is none, the status is unknown.
func Plan(ctx context.Context, t Trip, places []Place, opt Options) (Itinerary, error) {
	b, err := Build(t, places, opt)
	if err != nil {
		return Itinerary{}, err
	}
	return b.Plan(ctx, opt)
}

// Plan solves, audits and reads back what was built.
func (b *Built) Plan(ctx context.Context, opt Options) (Itinerary, error) {
	if opt.Progress != nil {
		opt.Solve.Progress = func(p planner.Plan) {
			if b.audit(p) == nil {
				opt.Progress(b.read(p, nil))
			}
		}
	}
	plan, err := planner.Solve(ctx, b.Problem, opt.Solve)
	if err != nil {
		return Itinerary{}, fmt.Errorf("plan %q: %w", b.Trip.Name, err)
	}
	if plan.Status == planner.Infeasible {
		reasons, err := planner.Explain(ctx, b.Problem, planner.Options{})
		if err != nil {
			return Itinerary{}, fmt.Errorf("plan %q: %w", b.Trip.Name, err)
		}
		if len(reasons) > 0 {
			plan.Why = reasons
		}
	}
	if err := b.audit(plan); err != nil {
		return Itinerary{}, err
	}
	return b.Itinerary(plan)
}

func (b *Built) audit(p planner.Plan) error {
	if err := planner.Audit(b.Problem, p); err != nil {
		return fmt.Errorf("plan %q: the answer does not pass the audit: %w", b.Trip.Name, err)
	}
	return nil
}
