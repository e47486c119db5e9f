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

// auditClock checks moments, windows and day limits, and returns the minutes waited.
func auditClock(p *Problem, plan Plan, legs []leg) (waited float64, err error) {
	d := p.Drive
	departs, km0 := d.DepartMin, 0.0 // this morning: when, and route position with the detour still to undo
	owed := 0.0                      // half detour from last night's place
	now, today := departs, 0.0
	at := 0.0
	for _, l := range legs {
		s := l.at
		today += s.Km - km0 + owed + s.DetourKm/2
		now += paceMinutes(d.Pace, s.Km) - paceMinutes(d.Pace, at) + s.DetourMin/2
		km0, owed, at = s.Km, 0, s.Km
		if today > d.MaxKmPerDay+Tolerance {
			return 0, &Broken{Rule: RuleDayKm, Stop: s.ID, Km: s.Km, Have: today, Need: d.MaxKmPerDay}
		}
		if err := stated(s, "arrive.km", l.Arrive.Km, s.Km); err != nil {
			return 0, err
		}
		if err := stated(s, "arrive.min", l.Arrive.Min, now); err != nil {
			return 0, err
		}
		open := opening(s.Open, now)
		if math.IsInf(open, 1) {
			return 0, &Broken{Rule: RuleOpen, Stop: s.ID, Km: s.Km, Have: now, Need: s.Open[len(s.Open)-1][1]}
		}
		waited += open - now
		now = open + s.StopMin
		if l.Night {
			if onRoad := now - departs; onRoad > d.MaxMinPerDay+Tolerance {
				return 0, &Broken{Rule: RuleDayMin, Stop: s.ID, Km: s.Km, Have: onRoad, Need: d.MaxMinPerDay}
			}
			departs += 1440 * float64(s.Night.Nights)
			if now > departs+Tolerance {
				return 0, &Broken{Rule: RuleNight, Stop: s.ID, Km: s.Km, Detail: "the next departure is earlier than the arrival"}
			}
			now, today, owed = departs, 0, s.DetourKm/2
		} else {
			for _, y := range l.Serve {
				now += offered(s, y.Tank).Min
			}
			owed = s.DetourKm / 2
		}
		if err := stated(s, "leave.km", l.Leave.Km, s.Km); err != nil {
			return 0, err
		}
		if err := stated(s, "leave.min", l.Leave.Min, now); err != nil {
			return 0, err
		}
		now += s.DetourMin / 2
	}
	today += p.LengthKm - km0 + owed
	now += paceMinutes(d.Pace, p.LengthKm) - paceMinutes(d.Pace, at)
	if today > d.MaxKmPerDay+Tolerance {
		return 0, &Broken{Rule: RuleDayKm, Km: p.LengthKm, Have: today, Need: d.MaxKmPerDay}
	}
	if onRoad := now - departs; onRoad > d.MaxMinPerDay+Tolerance {
		return 0, &Broken{Rule: RuleDayMin, Km: p.LengthKm, Have: onRoad, Need: d.MaxMinPerDay}
	}
	return waited, stated(nil, "end.min", plan.End.Min, now)
}

// paceMinutes is the driving time from the start of the route to km.
func paceMinutes(pace []Pace, km float64) float64 {
	minutes, from := 0.0, 0.0
	for _, piece := range pace {
		if km <= piece.ToKm {
			return minutes + (km-from)*piece.MinPerKm
		}
		minutes += (piece.ToKm - from) * piece.MinPerKm
		from = piece.ToKm
	}
	return minutes
}

// opening is the first minute from now on inside a window, +Inf if none is left.
func opening(windows [][2]float64, now float64) float64 {
	first := math.Inf(1)
	if len(windows) == 0 {
		return now
	}
	for _, w := range windows {
		if now <= w[1]+Tolerance {
			first = min(first, max(now, w[0]))
		}
	}
	return first
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

// A gauge follows one tank by its level between the lowest and highest that
// it may show: over the top of a supply tank, or under the bottom of a waste
// tank, use that restores is lost.
type gauge struct {
	Tank
	level float64
	km    float64
}

// use takes headroom, as driving and nights do.
func (g *gauge) use(units float64) {
	if g.Kind == Supply {
		g.level = math.Min(g.level-units, g.Capacity)
	} else {
		g.level = math.Max(g.level+units, 0)
	}
}

func (g *gauge) driveTo(km, detour float64) {
	g.use(g.PerKm * (km - g.km + detour))
	g.km = km
}

// headroom must hold at least want.
func (g *gauge) holds(rule Rule, s *Stop, want float64) error {
	have := g.level
	if g.Kind == Waste {
		have = g.Capacity - g.level
	}
	if have >= want-Tolerance {
		return nil
	}
	b := &Broken{Rule: rule, Tank: g.ID, Km: g.km, Have: have, Need: want}
	if s != nil {
		b.Stop = s.ID
	}
	return b
}

func auditTank(p *Problem, plan Plan, legs []leg, t Tank) error {
	g := &gauge{Tank: t, level: t.Start}
	for _, l := range legs {
		s := l.at
		g.driveTo(s.Km, s.DetourKm/2)
		if err := g.stated(s, "arrive.levels", l.Arrive.Levels, len(p.Tanks)); err != nil {
			return err
		}
		if err := g.holds(RuleReserve, s, t.Reserve); err != nil {
			return err
		}
		taken := slices.IndexFunc(l.Serve, func(y Serve) bool { return y.Tank == t.ID })
		if taken >= 0 && p.Backup {
			if err := g.holds(RuleSpare, s, offered(s, t.ID).Spare); err != nil {
				return err
			}
		}
		if err := g.atPlace(l, taken); err != nil {
			return err
		}
		if err := g.holds(RuleReserve, s, t.Reserve); err != nil {
			return err
		}
		if err := g.stated(s, "leave.levels", l.Leave.Levels, len(p.Tanks)); err != nil {
			return err
		}
		g.driveTo(s.Km, s.DetourKm/2)
		if err := g.holds(RuleReserve, s, t.Reserve); err != nil {
			return err
		}
	}
	g.driveTo(p.LengthKm, 0)
	if err := g.holds(RuleReserve, nil, t.Reserve); err != nil {
		return err
	}
	if err := g.stated(nil, "end.levels", plan.End.Levels, len(p.Tanks)); err != nil {
		return err
	}
	return g.atEnd(plan.End.Refill)
}

// atPlace is the service taken, if any (taken ≥ 0), and the night, if taken.
func (g *gauge) atPlace(l leg, taken int) error {
	use := 0.0
	if l.Night {
		use = l.at.Night.Use[g.ID]
	}
	if taken < 0 {
		g.use(use)
		return nil
	}
	amount := l.Serve[taken].Amount
	broken := &Broken{Stop: l.at.ID, Tank: g.ID, Km: l.at.Km}
	if g.Kind == Waste {
		out := math.Max(g.level+use, 0)
		if !(math.Abs(amount-out) <= statedTolerance) {
			broken.Rule, broken.Have, broken.Need = RuleAmount, amount, out
			return broken
		}
		g.level = 0
		return nil
	}
	if !(amount > 0) || math.IsInf(amount, 1) {
		broken.Rule, broken.Have, broken.Detail = RuleAmount, amount, "want more than 0"
		return broken
	}
	if g.level += amount - use; g.level > g.Capacity+Tolerance {
		broken.Rule, broken.Have, broken.Need = RuleCapacity, g.level, g.Capacity
		return broken
	}
	g.level = math.Min(g.level, g.Capacity)
	return nil
}

func (g *gauge) atEnd(refill map[string]float64) error {
	end, missing := g.End, 0.0
	if end != nil && end.AtMost != nil && g.level > *end.AtMost+Tolerance {
		return &Broken{Rule: RuleEnd, Tank: g.ID, Km: g.km, Have: g.level, Need: *end.AtMost}
	}
	if end != nil && end.AtLeast != nil {
		missing = math.Max(0, *end.AtLeast-g.level)
		if missing > Tolerance && end.RefillPrice == nil {
			return &Broken{Rule: RuleEnd, Tank: g.ID, Km: g.km, Have: g.level, Need: *end.AtLeast}
		}
	}
	return g.named(stated(nil, "end.refill", refill[g.ID], missing))
}

// stated compares the level that a plan shows for the tank; every tank of the
// problem and no other must be shown.
func (g *gauge) stated(s *Stop, field string, levels map[string]float64, tanks int) error {
	level, shown := levels[g.ID]
	if !shown || len(levels) != tanks {
		level = math.NaN()
	}
	return g.named(stated(s, field, level, g.level))
}

// named adds the tank to a wrong number.
func (g *gauge) named(err error) error {
	if b, ok := err.(*Broken); ok {
		b.Tank, b.Km = g.ID, g.km
	}
	return err
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
