package replay

import (
	"slices"
	"strings"

	"ullage/planner"
)

// Plan follows the visits (stop, night and serve; amounts of waste
// included) and returns the plan that they are: moments, levels at the end,
// what is left to refill, cost and its parts. Visits must be in the order of
// the problem; services may come in any order and are put in the stop's own.
// The status is [planner.Feasible] and the bound 0, which no plan can undercut.
//
// A *[planner.Broken] error names the first rule that the visits break. The problem
// must be valid; p and visits are neither changed nor kept.
// O(stops + visits × tanks).
func Plan(p *planner.Problem, visits []planner.Visit) (planner.Plan, error) {
	r := newReplayer(p)
	plan := planner.Plan{Format: planner.PlanFormat, Status: planner.Feasible, Visits: make([]planner.Visit, 0, len(visits))}
	if over := r.heavy(); over > planner.Tolerance {
		return planner.Plan{}, &planner.Broken{Rule: planner.RuleMass, Have: p.Mass.Most + over, Need: p.Mass.Most}
	}
	next := 0 // first stop that may still be visited
	for _, v := range visits {
		i, known := r.stopAt[v.Stop]
		if !known || i < next {
			return planner.Plan{}, &planner.Broken{Rule: planner.RuleOrder, Stop: v.Stop, Km: r.km}
		}
		next = i + 1
		done, err := r.visit(&p.Stops[i], v)
		if err != nil {
			return planner.Plan{}, err
		}
		plan.Visits = append(plan.Visits, done)
	}
	for _, s := range p.Stops {
		if s.Required && !r.keptRequired(s) {
			return planner.Plan{}, &planner.Broken{Rule: planner.RuleRequired, Stop: s.ID, Km: s.Km}
		}
	}
	for _, list := range p.RequireOne {
		if !slices.ContainsFunc(list, func(id string) bool { i, is := r.stopAt[id]; return is && r.keptRequired(p.Stops[i]) }) {
			return planner.Plan{}, &planner.Broken{Rule: planner.RuleOne, Found: strings.Join(list, " ")}
		}
	}
	end, err := r.finish()
	if err != nil {
		return planner.Plan{}, err
	}
	plan.End, plan.Parts = &end, &r.parts
	plan.Cost = r.parts.Goods + r.parts.Fees + r.parts.Nights + r.parts.Time + r.parts.Refill
	return plan, nil
}

// WasteAmounts returns a copy of visits in which every service of a waste tank
// states what comes out, so that a caller need not know it. It keeps to every
// rule on the way, but not to the end of the route; its error is that of [Plan].
func WasteAmounts(p *planner.Problem, visits []planner.Visit) ([]planner.Visit, error) {
	r := newReplayer(p)
	r.drain = true
	return r.amounts(visits)
}

// Fit is [WasteAmounts] and more: supply tanks get no more than there is room
// for (+Inf asks to fill up), and a service without room is left out.
func Fit(p *planner.Problem, visits []planner.Visit) ([]planner.Visit, error) {
	r := newReplayer(p)
	r.drain, r.pour = true, true
	return r.amounts(visits)
}

func (r *replayer) amounts(visits []planner.Visit) ([]planner.Visit, error) {
	out := make([]planner.Visit, 0, len(visits))
	for _, v := range visits {
		i, known := r.stopAt[v.Stop]
		if !known {
			return nil, &planner.Broken{Rule: planner.RuleOrder, Stop: v.Stop, Km: r.km}
		}
		done, err := r.visit(&r.p.Stops[i], v)
		if err != nil {
			return nil, err
		}
		if r.pour {
			done.Serve = slices.DeleteFunc(done.Serve, func(y planner.Serve) bool {
				return r.p.Tanks[r.tankAt[y.Tank]].Kind == planner.Supply && y.Amount <= planner.Tolerance
			})
		}
		for k := range done.Serve {
			done.Serve[k].Acts = nil
		}
		out = append(out, planner.Visit{Stop: v.Stop, Night: v.Night, Serve: done.Serve, Drain: done.Drain})
	}
	return out, nil
}
