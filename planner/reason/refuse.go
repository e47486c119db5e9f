package reason

import (
	"context"

	"ullage/planner"
	"ullage/planner/solve"
)

// Refuse says why a problem has no plan, and what comes nearest to one. It is
// what follows an answer of [solve.Solve] that no plan exists; of any other
// answer there is nothing to say.
//
// The reasons are every single limit that, loosened alone, would allow a plan,
// where it binds and how much is missing, and what changes in the hirer's hand
// would cure it. Every cure was tried by solving the changed problem; it is the
// smallest change (in steps of 0.1 units, 1 km, 1 minute, 1 %) with what the trip
// then costs, or costs at most where that is not proven. A limit that is proven to
// be missed whatever else gives way is named too. If there is none of either
// kind, there is one reason with limit "plan".
//
// The reasons are known first, and told to why, if that is not nil. The
// [Nearest] is nil if none was found. It solves some dozens of problems like p;
// opt.MaxLabels (0: 20,000) bounds each. If ctx ends, the reasons found by then
// are returned. The error is that of [solve.Solve].
func Refuse(ctx context.Context, p *planner.Problem, answer planner.Plan, opt solve.Options, why func([]planner.Reason)) ([]planner.Reason, *Nearest, error) {
	if answer.Status != planner.Infeasible {
		return nil, nil, nil
	}
	e := newExplainer(ctx, opt)
	alone := e.alone(p)
	reasons := e.reasons(p, alone)
	if why != nil && e.err == nil {
		why(reasons)
	}
	return reasons, e.nearest(p, alone), e.err
}
