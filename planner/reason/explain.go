package reason

import (
	"context"
	"math"
	"slices"

	"ullage/planner"
	"ullage/planner/solve"
)

func newExplainer(ctx context.Context, opt solve.Options) *explainer {
	opt.Progress = nil
	if opt.MaxLabels == 0 {
		opt.MaxLabels = 20_000 // many small questions; one that takes more counts as no
	}
	return &explainer{ctx: ctx, opt: opt}
}

// alone lists the limits that allow a plan when they alone give way, each by
// the least that it takes.
func (e *explainer) alone(p *planner.Problem) []loosened {
	var out []loosened
	for _, l := range limits(p) {
		if x, ok := e.smallest(p, l); ok {
			out = append(out, loosened{l, x})
		}
	}
	return out
}

// reasons are the limits of alone, and what is plainly impossible besides.
func (e *explainer) reasons(p *planner.Problem, alone []loosened) []planner.Reason {
	plain := planner.Shortfall(p)
	stuck, known := e.stuckAt(p)
	var out []planner.Reason
	for _, l := range alone {
		if l.tank != "" && slices.ContainsFunc(out, func(r planner.Reason) bool { return r.Limit == l.tank }) {
			continue // its end is to blame
		}
		r := planner.Reason{Kind: l.kind, Limit: l.limit}
		if l.step > 0 {
			r.Missing = l.x
		}
		r.ToKm = p.LengthKm // somewhere, if time ran out
		if known {
			r.FromKm, r.ToKm = l.stretch(p, stuck)
		}
		if i := slices.IndexFunc(plain, func(p planner.Reason) bool { return p.Limit == l.limit }); i >= 0 {
			r = plain[i] // says where it must be missed, not by how much all is cured
			r.Kind = l.kind
		}
		r.Changes = e.cures(p, l.change)
		out = append(out, r)
	}
	for _, r := range plain {
		if !slices.ContainsFunc(out, func(have planner.Reason) bool { return have.Limit == r.Limit }) {
			out = append(out, r)
		}
	}
	if len(out) == 0 && e.err == nil && known {
		out = []planner.Reason{{Kind: planner.ReasonPlan, Limit: "plan", ToKm: stuck}}
	}
	return out
}

type explainer struct {
	ctx context.Context
	opt solve.Options
	err error
}

// plan of a problem, the best that is found: its cost is proven if it is optimal.
func (e *explainer) plan(p *planner.Problem) (planner.Plan, bool) {
	if e.err != nil || e.ctx.Err() != nil {
		return planner.Plan{}, false
	}
	plan, err := solve.Solve(e.ctx, p, e.opt)
	if e.err = err; plan.Status == planner.Optimal {
		return plan, true
	}
	if some, ok := solve.Any(e.ctx, p); ok && (plan.End == nil || some.Cost < plan.Cost) {
		plan = some
	}
	return plan, plan.End != nil
}

// possible says whether a plan is found: by a quick search, or else a whole one.
func (e *explainer) possible(p *planner.Problem) bool {
	if e.err != nil || e.ctx.Err() != nil || len(planner.Shortfall(p)) > 0 {
		return false
	}
	if _, ok := solve.Any(e.ctx, p); ok {
		return true
	}
	plan, err := solve.Solve(e.ctx, p, e.opt)
	e.err = err
	return err == nil && plan.End != nil
}

// smallest x that allows a plan, a whole number of steps; none if time ran out
// before it was known to be the smallest.
func (e *explainer) smallest(p *planner.Problem, c change) (float64, bool) {
	if c.most <= 0 || !e.possible(changed(p, c, c.most)) {
		return 0, false
	}
	if c.step == 0 {
		return c.most, true
	}
	lo, hi := 0, int(math.Ceil(c.most/c.step)) // in steps; hi is enough, lo is not
	at := func(steps int) float64 { return min(float64(steps)*c.step, c.most) }
	for lo+1 < hi {
		if mid := (lo + hi) / 2; e.possible(changed(p, c, at(mid))) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return at(hi), e.ctx.Err() == nil
}

// cures are the changes that the hirer can make about a limit.
func (e *explainer) cures(p *planner.Problem, limit change) []planner.Change {
	var out []planner.Change
	for _, c := range hirerChanges(p, limit) {
		x, ok := e.smallest(p, c)
		if !ok {
			continue
		}
		if told, ok := e.told(changed(p, c, x), c, x); ok {
			out = append(out, told)
		}
	}
	return out
}

// told is a change by x with what the trip costs in the problem that it makes.
func (e *explainer) told(q *planner.Problem, c change, x float64) (planner.Change, bool) {
	plan, ok := e.plan(q)
	if c.kind == planner.ChangeUseLess {
		x /= 100 // it was tried in percent
	}
	return planner.Change{Kind: c.kind, Tank: c.tank, By: x, Cost: plan.Cost, Proven: plan.Status == planner.Optimal}, ok
}

// stuckAt is the first stop, or the end, that no plan reaches; known is false if time
// ran out before it was found.
func (e *explainer) stuckAt(p *planner.Problem) (km float64, known bool) {
	var kms []float64
	for _, s := range p.Stops {
		if s.Km > 0 && s.Km < p.LengthKm {
			kms = append(kms, s.Km)
		}
	}
	kms = slices.Compact(kms)
	lo, hi := 0, len(kms) // the first km not reached is in kms[lo:hi], or the end
	for lo < hi {
		mid := (lo + hi) / 2
		if e.possible(cutAt(p, kms[mid])) {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	known = e.ctx.Err() == nil
	if lo == len(kms) {
		return p.LengthKm, known
	}
	return kms[lo], known
}

// cutAt ends the trip at km, with nothing wanted there.
func cutAt(p *planner.Problem, km float64) *planner.Problem {
	q := p.Clone()
	q.LengthKm = km
	q.Drive.Pace = nil
	for _, piece := range p.Drive.Pace {
		q.Drive.Pace = append(q.Drive.Pace, planner.Pace{ToKm: min(piece.ToKm, km), MinPerKm: piece.MinPerKm})
		if piece.ToKm >= km {
			break
		}
	}
	q.Stops = slices.DeleteFunc(q.Stops, func(s planner.Stop) bool { return s.Km > km })
	for i := range q.Tanks {
		q.Tanks[i].End = nil
	}
	if p.Nights != nil {
		q.Nights = &planner.Range{Max: p.Nights.Max}
	}
	return q
}
