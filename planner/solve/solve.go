package solve

import (
	"context"
	"fmt"
	"math"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/internal/bound"
	"ullage/planner/internal/model"
)

// Options of [Solve]. The zero value is valid.
type Options struct {
	// Progress, if not nil, is called with every better plan as it is found,
	// and finally with the answer. Each has passed [audit.Check].
	Progress func(planner.Plan)
	// MaxLabels limits how many partial plans are kept at a time, and with it
	// memory, about 250 bytes each; 0 means 200,000. When it is reached, the
	// best plan so far is the answer, with the bound that is proven by then.
	// Bounds take up to 300 MB besides, and 10 kB for each stop.
	MaxLabels int
	// Most is what a plan may cost; 0: any sum. Where all cost more the answer is
	// [planner.Unknown], with a bound of at least that.
	Most float64
}

// Solve finds a plan of least cost and proves it: the answer is [planner.Optimal], or
// [planner.Infeasible] with reasons. If ctx ends first, or MaxLabels is reached, it is
// the best plan found so far ([planner.Feasible], with a proven bound) or [planner.Unknown].
//
// Of plans that cost the same, the one with fewer visits is the answer, then
// the one with the smaller stop ids. The same problem always gives the same
// answer, unless ctx ends. p is neither changed nor kept. The error is that
// of [planner.Problem.Validate], or tells of a fault in this package; the end of ctx
// is not an error.
//
// The cost grows about linearly with the number of stops as long as the bound
// is close; in the worst case it is exponential.
func Solve(ctx context.Context, p *planner.Problem, opt Options) (planner.Plan, error) {
	if err := p.Validate(); err != nil {
		return planner.Plan{}, err
	}
	if why := planner.Shortfall(p); len(why) > 0 {
		plan := planner.Plan{Format: planner.PlanFormat, Status: planner.Infeasible, Why: why}
		return plan, audit.Plan(p, plan)
	}
	if opt.MaxLabels == 0 {
		opt.MaxLabels = usualLabels
	}
	s := &solver{p: p, opt: opt, cost: math.Inf(1)}
	if opt.Most > 0 {
		s.cost = opt.Most
	}
	if ctx.Err() == nil {
		p = thin(p)
	}
	if ctx.Err() != nil {
		return s.answer(nil)
	}
	s.m = model.New(p)
	return s.solve(ctx)
}

type solver struct {
	p     *planner.Problem
	opt   Options
	m     *model.Model
	best  planner.Plan
	cost  float64 // of best, as labels count it
	bound float64
}

func (s *solver) solve(ctx context.Context) (planner.Plan, error) {
	if len(s.m.Stops) > crowd {
		if err := s.some(ctx); err != nil {
			return s.answer(err)
		}
	}
	f := newFinder(s.m, func() bool { return ctx.Err() != nil })
	effort := firstEffort + len(s.m.Stops)*len(s.m.Stops)/5 // the longer the trip, the dearer finer bounds
	for more := true; more; {
		before := f.best
		if more = f.next(); f.best == nil { // stopped before there were any bounds
			return s.answer(nil)
		}
		if math.IsInf(f.root, 1) {
			return s.infeasible()
		}
		if more && f.best == before {
			continue
		}
		s.bound = max(s.bound, min(f.root, s.cost))
		if !more {
			effort = math.MaxInt
		}
		if done, err := s.prove(ctx, newSweep(s.m, f.best), newSweep(s.m, f.guide), effort); done || err != nil {
			return s.answer(err)
		}
		effort *= 4
	}
	return s.answer(nil)
}

// some takes a plan to begin with, if few stops have one.
func (s *solver) some(ctx context.Context) error {
	if ctx.Err() != nil {
		return nil
	}
	if w := glimpse(ctx, model.New(sample(s.m))); w != nil {
		return s.take(w)
	}
	return nil
}

// prove sweeps for plans within a little of the bound, then within more, until
// one is found: nothing better can have been missed. The bound is close, so
// the sweeps that find nothing cost little. When they begin to cost more,
// narrow sweeps, by the guide as well, find a plan to show, and better ones.
// done says that there is nothing more to do; it is false if the sweeps keep
// more labels than effort.
func (s *solver) prove(ctx context.Context, w, guide *sweep, effort int) (done bool, err error) {
	step := firstStep * (math.Abs(s.bound) + 1)
	width, lines := s.narrowest()
	guides := []*sweep{w, guide}
	if guide.b == w.b {
		guides = guides[:1]
	}
	before, kept := s.bound, 1 // limit of the sweep before, labels it kept
	for n := 0; ; n++ {
		for ; kept > max(easy, width*lines/8) && width <= widest && effort > 0 && s.poor(); width *= 3 {
			if width > narrow {
				effort -= kept
			}
			if done, err := s.glance(ctx, guides, width); done || err != nil {
				return done, err
			}
		}
		if effort <= 0 {
			return false, nil
		}
		limit := s.limit(n, kept, step)
		done, err := s.sweep(ctx, w, limit, math.MaxInt, &effort)
		if done || err != nil || effort <= 0 {
			return done, err
		}
		now := max(1, len(w.labels.all))
		step = nextStep(step, limit-before, kept, now)
		before, kept = limit, now
	}
}

// limit is that of sweep n, after one that kept so many labels: a step beyond the
// bound, or all the way to the best plan where many steps have been next to nothing.
func (s *solver) limit(n, kept int, step float64) float64 {
	if n > 12 && kept < easy {
		return s.cost + model.Tie
	}
	return min(s.bound+step, s.cost+model.Tie)
}

// narrowest is the width of the first narrow sweep, and how many times as many
// labels it may keep.
func (s *solver) narrowest() (width, lines int) {
	width, lines = narrow, len(s.m.Stops)
	if nights := max(s.m.Least, s.m.LeastNights()); s.m.ByNights() && nights > bound.EasilyCounted {
		width, lines = narrow/3, lines*nights
	}
	return width, lines
}

// nextStep is how much wider the next sweep is, after one by so much that kept now
// labels instead of before: labels grow exponentially with the limit.
func nextStep(step, by float64, before, now int) float64 {
	switch {
	case now < few:
		return 2 * step
	case now > before:
		return min(2*step, by*growth/math.Log(float64(now)/float64(before)))
	}
	return step
}

// glance sweeps narrowly by each of the guides.
func (s *solver) glance(ctx context.Context, guides []*sweep, width int) (done bool, err error) {
	for _, w := range guides {
		whole := math.MaxInt
		if done, err := s.sweep(ctx, w, s.cost, width, &whole); done || err != nil {
			return done, err
		}
	}
	return false, nil
}

// poor says that there is no plan worth showing, or one that may be far too dear.
func (s *solver) poor() bool {
	return s.best.End == nil || s.cost-s.bound > 0.01*math.Abs(s.cost)
}

const (
	firstStep   = 0.0015 // of the bound
	widest      = 6 * 81
	easy        = 1000 // labels of a sweep that costs next to nothing
	few         = 60   // labels of a sweep that has hardly begun
	growth      = 1.8  // a sweep should keep e to this times the labels of the one before
	firstEffort = 1000 // labels of all sweeps with the first bounds
)

// sweep runs one sweep and takes what it found and proved. done says that
// there is nothing more to do. The labels kept are taken off effort.
func (s *solver) sweep(ctx context.Context, w *sweep, limit float64, width int, effort *int) (done bool, err error) {
	ended := w.run(ctx, limit, width, min(s.opt.MaxLabels, *effort))
	*effort -= len(w.labels.all)
	if err := s.take(w); err != nil {
		return false, err
	}
	s.bound = max(s.bound, min(w.lost, s.cost))
	return math.IsInf(s.bound, 1) || s.bound >= s.cost-2*model.Tie || ended != nil || width == math.MaxInt && len(w.labels.all) > s.opt.MaxLabels, nil
}

// take keeps what a sweep found if it is better.
func (s *solver) take(w *sweep) error {
	if w.best < 0 || !(w.cost < s.cost) {
		return nil
	}
	plan, err := w.plan(w.best)
	if err == nil {
		err = audit.Plan(s.p, plan)
	}
	if err != nil {
		return fmt.Errorf("planner: the solver made an invalid plan: %w", err)
	}
	// The plan may be cheaper: it leaves out services that nothing was bought of in the end.
	if plan.Cost > w.cost+1e-6*(1+w.cost) {
		return fmt.Errorf("planner: the solver took a plan of cost %v for one of %v", plan.Cost, w.cost)
	}
	s.best, s.cost = plan, min(w.cost, plan.Cost+model.PerVisit*float64(len(plan.Visits)))
	if s.opt.Progress != nil {
		plan.Bound = max(0, min(s.bound, plan.Cost))
		s.opt.Progress(plan)
	}
	return nil
}

// answer is the best plan with what is proven about it.
func (s *solver) answer(err error) (planner.Plan, error) {
	if err != nil {
		return planner.Plan{}, err
	}
	if math.IsInf(s.bound, 1) {
		return s.infeasible()
	}
	if s.best.End == nil {
		return planner.Plan{Format: planner.PlanFormat, Status: planner.Unknown, Bound: max(0, s.bound)}, nil
	}
	plan := s.best
	plan.Status = planner.Feasible
	plan.Bound = max(0, min(s.bound, plan.Cost))
	if plan.Cost-plan.Bound <= 1e-6*plan.Cost {
		plan.Status = planner.Optimal
	}
	if err := audit.Plan(s.p, plan); err != nil {
		return planner.Plan{}, err
	}
	if s.opt.Progress != nil {
		s.opt.Progress(plan)
	}
	return plan, nil
}

// infeasible is the answer that no plan exists; [reason.Refuse] says why.
func (s *solver) infeasible() (planner.Plan, error) {
	plan := planner.Plan{Format: planner.PlanFormat, Status: planner.Infeasible, Why: []planner.Reason{{Kind: planner.ReasonPlan, Limit: "plan", ToKm: s.p.LengthKm}}}
	return plan, audit.Plan(s.p, plan)
}
