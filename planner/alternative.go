package planner

import (
	"cmp"
	"context"
	"slices"
)

// An Alternative is the best plan that does without one of a plan's stops.
type Alternative struct {
	Without string  // stop
	Extra   float64 // what it costs more than the plan, ≥ 0
	Plan    Plan
}

// Alternatives returns up to count plans, cheapest first, that a person would
// tell from the given one and from each other: each is a plan of least cost
// without one of the stops visited, and no two visit the same stops. The first
// is thus the next-best of all plans that do not visit all the same stops.
//
// It solves one problem for each visit that is not required; those for which
// no plan was found are left out, as are the rest when ctx ends. The statuses
// of the plans say what is proven. The error is that of [Solve].
func Alternatives(ctx context.Context, p *Problem, plan Plan, count int, opt Options) ([]Alternative, error) {
	opt.Progress = nil
	var all []Alternative
	for _, v := range plan.Visits {
		i := slices.IndexFunc(p.Stops, func(s Stop) bool { return s.ID == v.Stop })
		if i < 0 || p.Stops[i].Required || ctx.Err() != nil {
			continue
		}
		q := *p
		q.Stops = slices.Delete(slices.Clone(p.Stops), i, i+1)
		other, err := Solve(ctx, &q, opt)
		if err != nil {
			return nil, err
		}
		if other.End != nil {
			all = append(all, Alternative{Without: v.Stop, Extra: max(0, other.Cost-plan.Cost), Plan: other})
		}
	}
	slices.SortStableFunc(all, func(a, b Alternative) int { return cmp.Compare(a.Extra, b.Extra) })
	var out []Alternative
	for _, a := range all {
		if len(out) < count && !slices.ContainsFunc(out, func(b Alternative) bool { return sameStops(a.Plan, b.Plan) }) {
			out = append(out, a)
		}
	}
	return out, nil
}

func sameStops(a, b Plan) bool {
	return slices.EqualFunc(a.Visits, b.Visits, func(v, w Visit) bool { return v.Stop == w.Stop && v.Night == w.Night })
}
