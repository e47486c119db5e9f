package habit

import (
	"slices"

	"ullage/planner"
	"ullage/planner/replay"
)

// This file leaves out stops that are made for next to nothing.

const (
	// little is the share of a tank for which nobody turns off the road, if it can be helped.
	little = 0.1
	// littleCost is what one stop fewer may cost more. Own choice: the price of a coffee or two.
	littleCost = 5.0
)

// fewer are the visits without one that is made for less than a tenth of each tank
// that it serves, if that makes a plan that is hardly dearer; what it bought is
// bought at the next such stop, or at the one before. ok is false if there is none.
func fewer(p *planner.Problem, visits []planner.Visit) (out []planner.Visit, ok bool) {
	cost, fine := costOf(p, visits)
	if !fine {
		return visits, false
	}
	for i, v := range visits {
		if v.Night || wanted(p, v.Stop) || !slight(p, v) {
			continue
		}
		for _, shift := range []func([]planner.Visit, int, planner.Serve) bool{later, earlier, nowhere} {
			q := slices.Delete(bare(visits), i, i+1)
			moved := true
			for _, y := range v.Serve {
				moved = moved && (kindOf(p, y.Tank) == planner.Waste || shift(q, i, y))
			}
			if !moved {
				continue
			}
			if c, fine := costOf(p, q); fine && c <= cost+littleCost {
				return q, true
			}
		}
	}
	return visits, false
}

// slight says whether a visit is for less than a tenth of each tank that it serves.
func slight(p *planner.Problem, v planner.Visit) bool {
	return !slices.ContainsFunc(v.Serve, func(y planner.Serve) bool {
		t := p.Tanks[slices.IndexFunc(p.Tanks, func(t planner.Tank) bool { return t.ID == y.Tank })]
		return y.Amount >= little*t.Capacity
	})
}

// later buys it at the next visit that buys the same; false if there is none.
func later(visits []planner.Visit, from int, y planner.Serve) bool {
	return add(visits[min(from, len(visits)):], y)
}

// earlier buys it at the visit before; false if there is none.
func earlier(visits []planner.Visit, from int, y planner.Serve) bool {
	before := slices.Clone(visits[:min(from, len(visits))])
	slices.Reverse(before)
	return add(before, y)
}

// nowhere does without.
func nowhere([]planner.Visit, int, planner.Serve) bool { return true }

// add puts an amount to the first visit that serves its tank.
func add(visits []planner.Visit, y planner.Serve) bool {
	for i := range visits {
		for k := range visits[i].Serve {
			if visits[i].Serve[k].Tank == y.Tank {
				visits[i].Serve[k].Amount += y.Amount
				return true
			}
		}
	}
	return false
}

// costOf visits; false if they break a rule.
func costOf(p *planner.Problem, visits []planner.Visit) (float64, bool) {
	visits, err := replay.WasteAmounts(p, visits)
	if err != nil {
		return 0, false
	}
	plan, err := replay.Plan(p, visits)
	return plan.Cost, err == nil
}
