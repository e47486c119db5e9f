package audit

import (
	"fmt"
	"maps"
	"slices"

	"ullage/planner"
)

func checkCost(p *planner.Problem, plan planner.Plan, legs []leg, waited float64) error {
	var want planner.CostParts
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
		return &planner.Broken{Rule: planner.RuleMoment, Field: "end.refill", Detail: fmt.Sprintf("refill of %q or another tank that the problem does not have", tank)}
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
			err.(*planner.Broken).Rule = planner.RuleCost
			return err
		}
	}
	return nil
}
