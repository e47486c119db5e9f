package answer

import (
	"context"

	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/habit"
	"ullage/planner/solve"
	"ullage/planner/trip"
)

// evenLabels bounds each of the problems that are solved to find even days: a plan that
// is hard to find is not looked for long.
const evenLabels = 1_000

// This file makes of the cheapest plan one that people rather drive.

// A lifelike plan is one that people rather drive.
type lifelike struct {
	plan   planner.Plan
	closed []backup.Closure // what becomes of it if a place is closed
	exact  planner.Plan     // before amounts were rounded: what other plans are compared with
	status planner.Status   // what is known of the cheapest plan
	least  *trip.Least      // nil: it is the cheapest
}

// lived is the plan with days about as long and amounts that people pump, where it
// keeps all that the cheapest one does. A plan in use keeps its days, and so does one that
// survives a closed place.
func (b asker) lived(ctx context.Context, plan planner.Plan, closed []backup.Closure) (lifelike, error) {
	l := lifelike{plan, closed, plan, plan.Status, nil}
	if len(b.Trip.Keep) == 0 && !b.Trip.Backup && plan.Status == planner.Optimal {
		var err error
		if l.exact, err = habit.Even(ctx, b.Problem, plan, solve.Options{MaxLabels: evenLabels}); err != nil {
			return l, err
		}
	}
	proven := plan.Status == planner.Optimal && l.exact.Status == planner.Optimal
	pumped := habit.Pump(b.Problem, l.exact)
	others := backup.Closures(b.Whole(), pumped)
	if b.Trip.Backup && lost(others) > lost(closed) {
		return l, nil
	}
	l.exact.Bound, l.exact.Status = min(plan.Bound, l.exact.Cost), plan.Status
	if pumped.Cost == plan.Cost {
		return l, nil
	}
	l.least = &trip.Least{Cost: plan.Cost, Even: l.exact.Cost - plan.Cost, Pump: pumped.Cost - l.exact.Cost, LongestKm: habit.Longest(b.Problem, pumped), Proven: proven}
	pumped.Status, pumped.Bound = planner.Feasible, min(plan.Bound, pumped.Cost)
	l.exact.Status = planner.Feasible
	l.plan, l.closed = pumped, others
	return l, nil
}

// lost is how many closed places a trip does not survive.
func lost(closures []backup.Closure) int {
	n := 0
	for _, c := range closures {
		if !c.Survived {
			n++
		}
	}
	return n
}
