package planner

// This file checks a finished plan. It shares no code with Replay or the
// solver, and looks at a plan the other way round: not visit by visit with
// all tanks, but one concern at a time over the whole trip: the list of
// visits, the clock, each tank by its level, the cost.

import (
	"fmt"
	"maps"
	"math"
	"slices"
)

// statedTolerance is what a number stated in a plan may differ from the
// audited one: files may round to six decimals.
const statedTolerance = 1e-5

// Audit says whether the plan is a valid answer to the problem: that every
// rule of the model is kept within [Tolerance], and that every number it
// states (moments, levels, refill, cost and parts) is right within 1e-5 plus
// 1e-9 of its size. For [Optimal] the bound must meet the cost within 1e-6 of
// it, for [Feasible] not exceed it. A plan of status [Infeasible] must state
// no visits and a reason, one of status [Unknown] no visits; that no plan
// exists cannot be audited, and neither can the bound itself.
//
// The error is a *[Broken], or that of [Problem.Validate]. O(stops + visits × tanks).
func Audit(p *Problem, plan Plan) error {
	if err := p.Validate(); err != nil {
		return err
	}
	return auditPlan(p, plan)
}

// auditPlan is [Audit] of a problem known to be valid.
func auditPlan(p *Problem, plan Plan) error {
	if err := auditStatus(plan); err != nil {
		return err
	}
	if plan.Status == Infeasible || plan.Status == Unknown {
		return nil
	}
	legs, err := auditVisits(p, plan)
	if err != nil {
		return err
	}
	clock, err := auditClock(p, plan, legs)
	if err != nil {
		return err
	}
	for _, t := range p.Tanks {
		if err := auditTank(p, plan, legs, t); err != nil {
			return err
		}
	}
	return auditCost(p, plan, legs, clock)
}

func auditStatus(plan Plan) error {
	broken := func(detail string) error { return &Broken{Rule: RuleStatus, Detail: detail} }
	if plan.Format != PlanFormat {
		return &Broken{Rule: RuleFormat, Detail: fmt.Sprintf("format is %q", plan.Format)}
	}
	for _, x := range []float64{plan.Cost, plan.Bound} {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return &Broken{Rule: RuleFormat, Detail: "cost or bound is not a finite number"}
		}
	}
	switch plan.Status {
	case Optimal, Feasible:
		if plan.End == nil || plan.Parts == nil {
			return broken("end and cost_parts must be stated")
		}
		gap := plan.Cost - plan.Bound
		small := 1e-6*math.Abs(plan.Cost) + 1e-9
		if gap < -small {
			return &Broken{Rule: RuleBound, Have: plan.Bound, Need: plan.Cost}
		}
		if plan.Status == Optimal && gap > small {
			return &Broken{Rule: RuleStatus, Have: plan.Bound, Need: plan.Cost, Detail: "optimal needs a bound that meets the cost"}
		}
	case Infeasible, Unknown:
		if len(plan.Visits) > 0 || plan.End != nil || plan.Parts != nil || plan.Cost != 0 {
			return broken("a plan without visits, end and cost is wanted for " + string(plan.Status))
		}
		if plan.Status == Infeasible && len(plan.Why) == 0 {
			return broken("infeasible needs a reason in why")
		}
	default:
		return broken(fmt.Sprintf("status is %q", plan.Status))
	}
	return nil
}

// A leg is a visit with the stop it is at.
type leg struct {
	Visit
	at *Stop
}

// auditVisits checks what is visited and taken, apart from numbers.
func auditVisits(p *Problem, plan Plan) ([]leg, error) {
	var legs []leg
	next := 0
	for _, v := range plan.Visits {
		i := slices.IndexFunc(p.Stops[next:], func(s Stop) bool { return s.ID == v.Stop })
		if i < 0 {
			return nil, &Broken{Rule: RuleOrder, Stop: v.Stop}
		}
		next += i + 1
		legs = append(legs, leg{v, &p.Stops[next-1]})
	}
	nights := 0
	for _, l := range legs {
		if err := auditServices(l.at, l.Visit); err != nil {
			return nil, err
		}
		if !l.Night {
			continue
		}
		if l.at.Night == nil {
			return nil, &Broken{Rule: RuleNight, Stop: l.Stop, Km: l.at.Km, Detail: "no night is offered"}
		}
		nights += l.at.Night.Nights
	}
	for _, s := range p.Stops {
		i := slices.IndexFunc(legs, func(l leg) bool { return l.Stop == s.ID })
		if s.Required && (i < 0 || s.Night != nil && !legs[i].Night) {
			return nil, &Broken{Rule: RuleRequired, Stop: s.ID, Km: s.Km}
		}
	}
	if r := p.Nights; r != nil && nights < r.Min {
		return nil, &Broken{Rule: RuleNights, Km: p.LengthKm, Have: float64(nights), Need: float64(r.Min)}
	} else if r != nil && nights > r.Max {
		return nil, &Broken{Rule: RuleNights, Km: p.LengthKm, Have: float64(nights), Need: float64(r.Max)}
	}
	return legs, nil
}

// auditServices walks the stop's own list: each service taken must come next.
func auditServices(s *Stop, v Visit) error {
	i := 0
	for _, y := range v.Serve {
		for i < len(s.Serves) && s.Serves[i].Tank != y.Tank {
			i++
		}
		if i == len(s.Serves) || s.Serves[i].GuestsOnly && !v.Night {
			return &Broken{Rule: RuleService, Stop: s.ID, Tank: y.Tank, Km: s.Km}
		}
		i++
	}
	return nil
}

func offered(s *Stop, tank string) Service {
	for _, x := range s.Serves {
		if x.Tank == tank {
			return x
		}
	}
	return Service{}
}

// stated compares a number in the plan with the audited one.
func stated(s *Stop, field string, have, want float64) error {
	if math.Abs(have-want) <= statedTolerance+1e-9*math.Abs(want) {
		return nil
	}
	b := &Broken{Rule: RuleMoment, Field: field, Have: have, Need: want}
	if s != nil {
		b.Stop, b.Km = s.ID, s.Km
	}
	return b
}

func auditCost(p *Problem, plan Plan, legs []leg, waited float64) error {
	var want CostParts
	minutes := waited
	for _, l := range legs {
		s := l.at
		want.Fees += s.Fee
		minutes += s.DetourMin + s.StopMin
		if l.Night {
			want.Nights += s.Night.Fee
		}
		for _, y := range l.Serve {
			x := offered(s, y.Tank)
			want.Goods += x.Price * y.Amount
			want.Fees += x.Fee
			minutes += x.Min
		}
	}
	want.Time = minutes / 60 * p.TimeCostPerH
	known := 0
	for _, t := range p.Tanks {
		missing, ok := plan.End.Refill[t.ID]
		if ok {
			known++
		}
		if t.End != nil && t.End.RefillPrice != nil {
			want.Refill += missing * *t.End.RefillPrice
		}
	}
	if known < len(plan.End.Refill) {
		tank := slices.Sorted(maps.Keys(plan.End.Refill))[0]
		return &Broken{Rule: RuleMoment, Field: "end.refill", Detail: fmt.Sprintf("refill of %q or another tank that the problem does not have", tank)}
	}
	have := *plan.Parts
	for _, c := range []struct {
		field      string
		have, want float64
	}{
		{"cost_parts.goods", have.Goods, want.Goods}, {"cost_parts.fees", have.Fees, want.Fees},
		{"cost_parts.nights", have.Nights, want.Nights}, {"cost_parts.time", have.Time, want.Time},
		{"cost_parts.refill", have.Refill, want.Refill},
		{"cost", plan.Cost, want.Goods + want.Fees + want.Nights + want.Time + want.Refill},
	} {
		if err := stated(nil, c.field, c.have, c.want); err != nil {
			err.(*Broken).Rule = RuleCost
			return err
		}
	}
	return nil
}
