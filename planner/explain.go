package planner

import (
	"context"
	"fmt"
	"math"
	"slices"
)

// Explain says why a problem has no plan: every single limit that, loosened
// alone, would allow one, where it binds and how much is missing, and what
// changes in the hirer's hand would cure it. Every cure was tried by
// solving the changed problem; its text gives the smallest change (in steps of
// 0.1 units, 1 km, 1 minute, 1 %) and what the trip then costs, or
// costs at most where that is not proven.
//
// A limit that is proven to be missed whatever else gives way is named too. If
// there is none of either kind, there is one reason with limit "plan". A
// problem that has a plan, or for which neither a plan nor a proof was found,
// has no reasons. It solves some dozens of problems like p; opt.MaxLabels
// (0: 20,000) bounds each. If ctx ends, the reasons found by then are returned.
// The error is that of [Solve].
func Explain(ctx context.Context, p *Problem, opt Options) ([]Reason, error) {
	e := newExplainer(ctx, opt)
	if infeasible, err := e.infeasible(p); err != nil || !infeasible {
		return nil, err
	}
	return e.reasons(p, e.alone(p)), e.err
}

// Refuse is what follows an answer of [Solve] that no plan exists: the reasons
// of [Explain], and the [Nearest], nil if none was found. The reasons are
// known first, and told to why, if that is not nil. Of any other answer there
// is nothing to say.
func Refuse(ctx context.Context, p *Problem, answer Plan, opt Options, why func([]Reason)) ([]Reason, *Nearest, error) {
	if answer.Status != Infeasible {
		return nil, nil, nil
	}
	e := newExplainer(ctx, opt)
	alone := e.alone(p)
	reasons := e.reasons(p, alone)
	if why != nil && e.err == nil {
		why(reasons)
	}
	return reasons, e.nearest(p, alone), e.err
}

func newExplainer(ctx context.Context, opt Options) *explainer {
	opt.Progress = nil
	if opt.MaxLabels == 0 {
		opt.MaxLabels = 20_000 // many small questions; one that takes more counts as no
	}
	return &explainer{ctx: ctx, opt: opt}
}

func (e *explainer) infeasible(p *Problem) (bool, error) {
	if err := p.Validate(); err != nil {
		return false, err
	}
	if len(shortfall(p)) > 0 {
		return true, nil
	}
	plan, err := Solve(e.ctx, p, e.opt)
	return plan.Status == Infeasible, err
}

// A loosened limit is one that allows a plan when it gives way by x.
type loosened struct {
	change
	x float64
}

// alone lists the limits that allow a plan when they alone give way, each by
// the least that it takes.
func (e *explainer) alone(p *Problem) []loosened {
	var out []loosened
	for _, l := range limits(p) {
		if x, ok := e.smallest(p, l); ok {
			out = append(out, loosened{l, x})
		}
	}
	return out
}

// reasons are the limits of alone, and what is plainly impossible besides.
func (e *explainer) reasons(p *Problem, alone []loosened) []Reason {
	plain := shortfall(p)
	stuck := e.stuckAt(p)
	var out []Reason
	for _, l := range alone {
		if l.tank != "" && slices.ContainsFunc(out, func(r Reason) bool { return r.Limit == l.tank }) {
			continue // its end is to blame
		}
		r := Reason{Limit: l.name}
		if l.step > 0 {
			r.Missing = l.x
		}
		r.FromKm, r.ToKm = l.stretch(p, stuck)
		r.Text = fmt.Sprintf("%s, between km %.0f and km %.0f", l.say(l.x), r.FromKm, r.ToKm)
		if i := slices.IndexFunc(plain, func(p Reason) bool { return p.Limit == l.name }); i >= 0 {
			r = plain[i] // says where it must be missed, not by how much all is cured
		}
		r.Cures = e.cures(p, l.change)
		out = append(out, r)
	}
	for _, r := range plain {
		if !slices.ContainsFunc(out, func(have Reason) bool { return have.Limit == r.Limit }) {
			out = append(out, r)
		}
	}
	if len(out) == 0 && e.err == nil && e.ctx.Err() == nil {
		out = []Reason{{Limit: "plan", ToKm: stuck,
			Text: fmt.Sprintf("no plan was found that gets beyond km %.0f, and no single change to a tank, the day, the nights or the end that cures it", stuck)}}
	}
	return out
}

type explainer struct {
	ctx context.Context
	opt Options
	err error
}

// cost of a problem in words, "" if no plan was found.
func (e *explainer) cost(p *Problem) string {
	if e.err != nil || e.ctx.Err() != nil {
		return ""
	}
	plan, err := Solve(e.ctx, p, e.opt)
	if e.err = err; plan.Status == Optimal {
		return fmt.Sprintf("the trip then costs %.2f", plan.Cost)
	}
	if some, ok := anyPlan(e.ctx, p); ok && (plan.End == nil || some.Cost < plan.Cost) {
		plan = some
	}
	if plan.End == nil {
		return ""
	}
	return fmt.Sprintf("the trip then costs at most %.2f", plan.Cost)
}

// possible says whether a plan is found: by a quick search, or else a whole one.
func (e *explainer) possible(p *Problem) bool {
	if e.err != nil || e.ctx.Err() != nil || len(shortfall(p)) > 0 {
		return false
	}
	if _, ok := anyPlan(e.ctx, p); ok {
		return true
	}
	plan, err := Solve(e.ctx, p, e.opt)
	e.err = err
	return err == nil && plan.End != nil
}

// smallest x that allows a plan, a whole number of steps.
func (e *explainer) smallest(p *Problem, c change) (float64, bool) {
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
	return at(hi), true
}

// cures are the changes that the hirer can make about a limit.
func (e *explainer) cures(p *Problem, limit change) []string {
	var out []string
	for _, c := range hirerChanges(p, limit) {
		if x, ok := e.smallest(p, c); ok {
			if cost := e.cost(changed(p, c, x)); cost != "" {
				out = append(out, c.say(x)+": "+cost)
			}
		}
	}
	return out
}

// stuckAt is the first stop, or the end, that no plan reaches.
func (e *explainer) stuckAt(p *Problem) float64 {
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
	if lo == len(kms) {
		return p.LengthKm
	}
	return kms[lo]
}

// cutAt ends the trip at km, with nothing wanted there.
func cutAt(p *Problem, km float64) *Problem {
	q := copyOf(p)
	q.LengthKm = km
	q.Drive.Pace = nil
	for _, piece := range p.Drive.Pace {
		q.Drive.Pace = append(q.Drive.Pace, Pace{ToKm: min(piece.ToKm, km), MinPerKm: piece.MinPerKm})
		if piece.ToKm >= km {
			break
		}
	}
	q.Stops = slices.DeleteFunc(q.Stops, func(s Stop) bool { return s.Km > km })
	for i := range q.Tanks {
		q.Tanks[i].End = nil
	}
	if p.Nights != nil {
		q.Nights = &Range{Max: p.Nights.Max}
	}
	return q
}
