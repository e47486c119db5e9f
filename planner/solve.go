package planner

import (
	"context"
	"errors"
	"fmt"
	"math"
)

// Options of [Solve]. The zero value is valid.
type Options struct {
	// Progress, if not nil, is called with every better plan as it is found,
	// and finally with the answer. Each has passed [Audit].
	Progress func(Plan)
	// MaxLabels limits how many partial plans are kept at a time, and with it
	// memory, about 250 bytes each; 0 means 400,000. When it is reached, the
	// best plan so far is the answer, with the bound that is proven by then.
	MaxLabels int
}

// Solve finds a plan of least cost and proves it: the answer is [Optimal], or
// [Infeasible] with reasons. If ctx ends first, or MaxLabels is reached, it is
// the best plan found so far ([Feasible], with a proven bound) or [Unknown].
//
// Of plans that cost the same, the one with fewer visits is the answer, then
// the one with the smaller stop ids. The same problem always gives the same
// answer, unless ctx ends. p is neither changed nor kept. The error is that
// of [Problem.Validate], or tells of a fault in this package; the end of ctx
// is not an error.
//
// The cost grows about linearly with the number of stops as long as the bound
// is close; in the worst case it is exponential.
func Solve(ctx context.Context, p *Problem, opt Options) (Plan, error) {
	if err := p.Validate(); err != nil {
		return Plan{}, err
	}
	for i, s := range p.Stops {
		if len(s.Serves) > 32 {
			return Plan{}, fmt.Errorf("planner: stops[%d] %q: %d services, want 32 at most", i, s.ID, len(s.Serves))
		}
	}
	if len(p.Tanks) > 32 {
		return Plan{}, fmt.Errorf("planner: %d tanks, want 32 at most", len(p.Tanks))
	}
	if opt.MaxLabels == 0 {
		opt.MaxLabels = 400_000
	}
	s := &solver{p: p, opt: opt, bound: 0, cost: math.Inf(1)}
	return s.solve(ctx)
}

type solver struct {
	p     *Problem
	opt   Options
	m     *model
	best  Plan
	cost  float64 // of best, as labels count it
	bound float64
}

func (s *solver) solve(ctx context.Context) (Plan, error) {
	s.m = newModel(s.p)
	w := newSweep(s.m, newBounds(s.m, s.m.worths()))

	// 1. A narrow sweep finds a plan, or that there is none.
	// 2. Wider ones, only for what may be better, until nothing is lost.
	for width := 24; ; width *= 8 {
		limit := math.Inf(1)
		if !math.IsInf(s.cost, 1) {
			limit = s.cost + tie
		}
		err := w.run(ctx, limit, width, s.opt.MaxLabels)
		if err2 := s.take(w); err2 != nil {
			return Plan{}, err2
		}
		s.bound = max(s.bound, min(w.lost, s.cost))
		if math.IsInf(s.cost, 1) && math.IsInf(w.lost, 1) {
			return s.infeasible(w)
		}
		if s.bound >= s.cost-2*tie || err != nil || width >= s.opt.MaxLabels || len(w.labels.all) > s.opt.MaxLabels {
			return s.answer()
		}
	}
}

// take keeps what a sweep found if it is better.
func (s *solver) take(w *sweep) error {
	if w.best < 0 || !(w.cost < s.cost) {
		return nil
	}
	plan, err := w.plan(w.best)
	if err == nil {
		err = Audit(s.p, plan)
	}
	if err != nil {
		return fmt.Errorf("planner: the solver made an invalid plan: %w", err)
	}
	if math.Abs(plan.Cost-w.cost) > 1e-6*(1+w.cost) {
		return fmt.Errorf("planner: the solver took a plan of cost %v for one of %v", plan.Cost, w.cost)
	}
	s.best, s.cost = plan, w.cost
	if s.opt.Progress != nil {
		plan.Bound = max(0, min(s.bound, plan.Cost))
		s.opt.Progress(plan)
	}
	return nil
}

func (s *solver) answer() (Plan, error) {
	if math.IsInf(s.cost, 1) {
		return Plan{Format: PlanFormat, Status: Unknown, Bound: s.bound}, nil
	}
	plan := s.best
	plan.Status = Feasible
	plan.Bound = max(0, min(s.bound, plan.Cost))
	if plan.Cost-plan.Bound <= 1e-6*plan.Cost {
		plan.Status = Optimal
	}
	if err := Audit(s.p, plan); err != nil {
		return Plan{}, err
	}
	if s.opt.Progress != nil {
		s.opt.Progress(plan)
	}
	return plan, nil
}

func (s *solver) infeasible(w *sweep) (Plan, error) {
	plan := Plan{Format: PlanFormat, Status: Infeasible, Why: []Reason{{Limit: "plan", ToKm: s.p.LengthKm, Text: "no plan keeps every limit"}}}
	return plan, errors.Join(Audit(s.p, plan))
}
