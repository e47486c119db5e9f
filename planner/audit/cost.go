package audit

import (
	"maps"
	"slices"

	"ullage/planner"
)

// checkCost compares every part of the cost, and their sum.
func checkCost(p *planner.Problem, plan planner.Plan, legs []leg, waited float64) error {
	if err := checkRefill(p, plan.End.Refill); err != nil {
		return err
	}
	have, want := *plan.Parts, costOf(p, plan, legs, waited)
	for _, c := range []struct {
		field      string
		have, want float64
	}{
		{"cost_parts.goods", have.Goods, want.Goods}, {"cost_parts.fees", have.Fees, want.Fees},
		{"cost_parts.nights", have.Nights, want.Nights}, {"cost_parts.time", have.Time, want.Time},
		{"cost_parts.refill", have.Refill, want.Refill},
		{"cost", plan.Cost, want.Goods + want.Fees + want.Nights + want.Time + want.Refill},
	} {
		if differ(c.have, c.want) {
			return &planner.Broken{Rule: planner.RuleCost, Field: c.field, Have: c.have, Need: c.want}
		}
	}
	return nil
}

// checkRefill wants no tank refilled that the problem does not have.
func checkRefill(p *planner.Problem, refill map[string]float64) error {
	for _, id := range slices.Sorted(maps.Keys(refill)) {
		if !slices.ContainsFunc(p.Tanks, func(t planner.Tank) bool { return t.ID == id }) {
			return &planner.Broken{Rule: planner.RuleMoment, Field: "end.refill", Km: p.LengthKm, Detail: planner.UnknownTank, Found: id}
		}
	}
	return nil
}

// costOf is what the visits cost, with the minutes waited.
func costOf(p *planner.Problem, plan planner.Plan, legs []leg, minutes float64) planner.CostParts {
	var want planner.CostParts
	for _, l := range legs {
		s := l.at
		want.Fees += s.Fee
		minutes += s.DetourMin + s.StopMin
		if l.Night {
			want.Nights += s.Night.Fee
			minutes += s.Night.Min
		}
		for _, y := range l.Serve {
			x, times := offered(s, y.Tank), 1.0
			if l.Night {
				n, _ := paidActs(p.Tanks[slices.IndexFunc(p.Tanks, func(t planner.Tank) bool { return t.ID == y.Tank })], s.Night)
				times = float64(n)
			}
			want.Goods += x.Price * y.Amount
			want.Fees += times * x.Fee
			minutes += times * x.Min
		}
	}
	want.Time = minutes / 60 * p.TimeCostPerH
	for _, t := range p.Tanks {
		if t.End != nil && t.End.RefillPrice != nil {
			want.Refill += plan.End.Refill[t.ID] * *t.End.RefillPrice
		}
	}
	return want
}
