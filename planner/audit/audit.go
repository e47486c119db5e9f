package audit

import (
	"math"

	"ullage/planner"
)

// Check says whether the plan is a valid answer to the problem: that every
// rule of the model is kept within [planner.Tolerance], and that every number it
// states (moments, levels, refill, cost and parts) is right within 1e-5 plus
// 1e-9 of its size. For [planner.Optimal] the bound must meet the cost within 1e-6 of
// it, for [planner.Feasible] not exceed it. A plan of status [planner.Infeasible] must state
// no visits and a reason, one of status [planner.Unknown] no visits; that no plan
// exists cannot be audited, and neither can the bound itself.
//
// The error is a *[planner.Broken], or that of [planner.Problem.Validate]. O(stops + visits × tanks).
func Check(p *planner.Problem, plan planner.Plan) error {
	if err := p.Validate(); err != nil {
		return err
	}
	return Plan(p, plan)
}

// Plan is [Check] of a problem known to be valid.
func Plan(p *planner.Problem, plan planner.Plan) error {
	if err := checkStatus(plan); err != nil {
		return err
	}
	if plan.Status == planner.Infeasible || plan.Status == planner.Unknown {
		return nil
	}
	legs, err := checkVisits(p, plan)
	if err != nil {
		return err
	}
	clock, err := checkClock(p, plan, legs)
	if err != nil {
		return err
	}
	for _, t := range p.Tanks {
		if err := checkTank(p, plan, legs, t); err != nil {
			return err
		}
	}
	if err := checkMass(p, legs); err != nil {
		return err
	}
	return checkCost(p, plan, legs, clock)
}

func checkStatus(plan planner.Plan) error {
	if plan.Format != planner.PlanFormat {
		return &planner.Broken{Rule: planner.RuleFormat, Found: plan.Format}
	}
	for _, x := range []float64{plan.Cost, plan.Bound} {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return &planner.Broken{Rule: planner.RuleFormat, Detail: planner.NotFinite}
		}
	}
	switch plan.Status {
	case planner.Optimal, planner.Feasible:
		return checkProof(plan)
	case planner.Infeasible, planner.Unknown:
		return checkNone(plan)
	}
	return &planner.Broken{Rule: planner.RuleStatus, Found: string(plan.Status)}
}

// checkProof: a plan states what follows from it, and a bound that fits.
func checkProof(plan planner.Plan) error {
	if plan.End == nil || plan.Parts == nil {
		return &planner.Broken{Rule: planner.RuleStatus, Detail: planner.NotStated}
	}
	gap := plan.Cost - plan.Bound
	small := 1e-6*math.Abs(plan.Cost) + 1e-9
	if gap < -small {
		return &planner.Broken{Rule: planner.RuleBound, Have: plan.Bound, Need: plan.Cost}
	}
	if plan.Status == planner.Optimal && gap > small {
		return &planner.Broken{Rule: planner.RuleStatus, Detail: planner.BoundOff, Have: plan.Bound, Need: plan.Cost}
	}
	return nil
}

// checkNone: where there is no plan, none is stated.
func checkNone(plan planner.Plan) error {
	if len(plan.Visits) > 0 || plan.End != nil || plan.Parts != nil || plan.Cost != 0 {
		return &planner.Broken{Rule: planner.RuleStatus, Detail: planner.NotEmpty, Found: string(plan.Status)}
	}
	if plan.Status == planner.Infeasible && len(plan.Why) == 0 {
		return &planner.Broken{Rule: planner.RuleStatus, Detail: planner.NoReason}
	}
	return nil
}
