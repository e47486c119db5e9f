package habit

import (
	"math"
	"slices"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/replay"
)

const (
	// roundTo is what a pump is stopped at, in the unit of the tank: whole five litres. Own choice.
	roundTo = 5.0
)

// Pump changes the amounts of a plan to those that people pump, and leaves out stops
// for next to nothing. What is bought is rounded up to whole fives or to a full tank;
// where it costs no more than later on it is all that the rest of the trip needs. The
// answer is a plan of p as well, at most a little dearer: the plan itself where
// nothing else is valid. Its bound is that of the plan.
//
// The plan must have passed [audit.Check]. O(visits² × (stops + visits × tanks)).
func Pump(p *planner.Problem, plan planner.Plan) planner.Plan {
	if plan.End == nil {
		return plan
	}
	visits := bare(plan.Visits)
	for changed := true; changed; {
		visits, changed = fewer(p, visits)
	}
	best := plan
	if q, ok := valid(p, visits, plan); ok {
		best = q
	}
	for i := range p.Tanks { // one tank at a time, so that one that cannot be rounded spoils no other
		if q, ok := valid(p, rounded(p, best, i), plan); ok {
			best = q
		}
	}
	return best
}

// valid is the plan that visits are, with the bound of another, if it keeps every rule.
func valid(p *planner.Problem, visits []planner.Visit, of planner.Plan) (planner.Plan, bool) {
	visits, err := replay.WasteAmounts(p, visits)
	if err != nil {
		return planner.Plan{}, false
	}
	q, err := replay.Plan(p, visits)
	if err != nil {
		return planner.Plan{}, false
	}
	q.Bound = math.Min(of.Bound, q.Cost)
	return q, audit.Plan(p, q) == nil
}

// rounded are the visits of a plan with the amounts of one supply tank rounded up.
func rounded(p *planner.Problem, plan planner.Plan, tank int) []planner.Visit {
	t, visits, more := p.Tanks[tank], bare(plan.Visits), 0.0
	if t.Kind != planner.Supply {
		return visits
	}
	left := 0.0 // what the plan still buys
	for _, v := range visits {
		left += amount(v, t.ID)
	}
	for i := range visits {
		v := &visits[i]
		k := slices.IndexFunc(v.Serve, func(y planner.Serve) bool { return y.Tank == t.ID })
		if k < 0 {
			continue
		}
		s, was := p.Stop(v.Stop), v.Serve[k].Amount
		price := priceOf(s, t.ID)
		if price == 0 { // filled to the brim as it is
			left -= was
			continue
		}
		want := was - more
		if cheapestFrom(p, visits[i:], t.ID) >= price-planner.Tolerance {
			want = left - more
		}
		room := t.Capacity - plan.Visits[i].Arrive.Levels[t.ID] - more
		if v.Night {
			room += s.Night.Use[t.ID]
		}
		now := math.Max(0, math.Min(math.Ceil((want-planner.Tolerance)/roundTo)*roundTo, room))
		if room-now < 1 { // nobody stops that near the brim
			now = math.Max(0, room)
		}
		left -= was
		more += now - was
		v.Serve[k].Amount = now
	}
	return without(p, visits)
}

func amount(v planner.Visit, tank string) float64 {
	for _, y := range v.Serve {
		if y.Tank == tank {
			return y.Amount
		}
	}
	return 0
}

func priceOf(s *planner.Stop, tank string) float64 {
	for _, x := range s.Serves {
		if x.Tank == tank {
			return x.Price
		}
	}
	return 0
}

// cheapestFrom is the least price of a tank at visits that buy it.
func cheapestFrom(p *planner.Problem, visits []planner.Visit, tank string) float64 {
	least := math.Inf(1)
	for _, v := range visits {
		if amount(v, tank) > 0 {
			least = math.Min(least, priceOf(p.Stop(v.Stop), tank))
		}
	}
	return least
}

// without leaves out what buys nothing, and calls where nothing is done any more.
func without(p *planner.Problem, visits []planner.Visit) []planner.Visit {
	for i := range visits {
		visits[i].Serve = slices.DeleteFunc(visits[i].Serve, func(y planner.Serve) bool {
			return y.Amount <= planner.Tolerance && kindOf(p, y.Tank) == planner.Supply
		})
	}
	return slices.DeleteFunc(visits, func(v planner.Visit) bool { return len(v.Serve) == 0 && !v.Night && !wanted(p, v.Stop) })
}
