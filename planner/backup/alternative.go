package backup

import (
	"cmp"
	"context"
	"slices"

	"ullage/planner"
	"ullage/planner/replay"
	"ullage/planner/solve"
)

// An Alternative is a good plan that a person tells from the one at hand: a
// night is somewhere else, or there are fewer stops.
type Alternative struct {
	Without string  // the night at this stop is spent elsewhere; "": fewer stops
	Extra   float64 // what it costs more than the plan at hand; < 0 if that is not the cheapest
	Plan    planner.Plan
}

// Alternatives returns up to count plans, cheapest first. Each is either a plan
// of least cost without one of the nights as planned, or a plan with fewer
// visits; of these, one that is found by charging for every visit, which is
// the cheapest for its number of visits. No two have the same nights and the
// same number of visits, nor has the plan at hand.
//
// It solves a problem for each night that is not required and up to four
// more. Those without a plan are left out, as is the rest when ctx ends. The
// bounds are those of the problems solved. The error is that of [solve.Solve].
func Alternatives(ctx context.Context, p *planner.Problem, plan planner.Plan, count int, opt solve.Options) ([]Alternative, error) {
	opt.Progress = nil
	all, err := elsewhere(ctx, p, plan, opt)
	if err != nil {
		return nil, err
	}
	fewer, err := fewerStops(ctx, p, plan, opt)
	if err != nil {
		return nil, err
	}
	all = append(all, fewer...)
	var out []Alternative
	for len(out) < count {
		next := -1 // the cheapest that is not like one that is shown
		for i, a := range all {
			like := func(b Alternative) bool { return !differs(p, a.Plan, b.Plan) }
			if differs(p, a.Plan, plan) && !slices.ContainsFunc(out, like) && (next < 0 || a.Extra < all[next].Extra) {
				next = i
			}
		}
		if next < 0 {
			break
		}
		out = append(out, all[next])
	}
	return out, nil
}

// elsewhere solves without each of the nights.
func elsewhere(ctx context.Context, p *planner.Problem, plan planner.Plan, opt solve.Options) ([]Alternative, error) {
	var out []Alternative
	for _, v := range plan.Visits {
		here := p.Stop(v.Stop)
		if !v.Night || here.Required || ctx.Err() != nil {
			continue
		}
		q := p.Clone()
		for i, s := range q.Stops {
			if (s.ID == here.ID || s.Site != "" && s.Site == here.Site) && s.Night != nil && !s.Required {
				q.Stops[i].Night = nil
				q.Stops[i].Serves = slices.DeleteFunc(slices.Clone(s.Serves), func(x planner.Service) bool { return x.GuestsOnly })
				q.Unlisted(func(id string) bool { return id == s.ID })
			}
		}
		other, err := solve.Solve(ctx, q, opt)
		if err != nil {
			return nil, err
		}
		if other.End != nil {
			out = append(out, Alternative{Without: v.Stop, Extra: other.Cost - plan.Cost, Plan: other})
		}
	}
	return out, nil
}

// fewerStops charges more and more for a visit until one is left out.
func fewerStops(ctx context.Context, p *planner.Problem, plan planner.Plan, opt solve.Options) ([]Alternative, error) {
	for _, share := range []float64{0.02, 0.06, 0.2, 0.6} { // of the plan's cost
		if ctx.Err() != nil || len(plan.Visits) == 0 {
			return nil, nil
		}
		q := p.Clone()
		for i := range q.Stops {
			q.Stops[i].Fee += share * max(plan.Cost, 1)
		}
		charged, err := solve.Solve(ctx, q, opt)
		if err != nil {
			return nil, err
		}
		if charged.End != nil && len(charged.Visits) < len(plan.Visits) {
			other, err := replay.Plan(p, charged.Visits)
			return []Alternative{{Extra: other.Cost - plan.Cost, Plan: other}}, err
		}
	}
	return nil, nil
}

// differs is true if people see the difference: where the nights are, or how
// many stops there are.
func differs(p *planner.Problem, a, b planner.Plan) bool {
	return len(a.Visits) != len(b.Visits) || !slices.Equal(nightSites(p, a), nightSites(p, b))
}

func nightSites(p *planner.Problem, plan planner.Plan) []string {
	var out []string
	for _, v := range plan.Visits {
		if v.Night {
			s := p.Stop(v.Stop)
			for range s.Night.Nights {
				out = append(out, cmp.Or(s.Site, s.ID))
			}
		}
	}
	return out
}
