package planner

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
)

// This file says why there is no plan: it gives way on one limit at a time,
// by as little as lets a narrow sweep find a plan, and reports where that plan
// breaks the limit as it is.

// A way is one limit that can be given way on.
type way struct {
	limit string
	day   bool // a night gives it anew
	most  float64
	give  func(p *Problem, by float64)
}

// infeasible is the answer that no plan exists, with what stands in the way.
func (s *solver) infeasible(ctx context.Context) (Plan, error) {
	plan := Plan{Format: PlanFormat, Status: Infeasible}
	for _, w := range ways(s.p) {
		if r, ok := s.why(ctx, w); ok {
			plan.Why = append(plan.Why, r)
		}
	}
	if len(plan.Why) == 0 {
		plan.Why = []Reason{{Limit: "plan", ToKm: s.p.LengthKm, Text: "no plan keeps all limits, and giving way on one of them alone does not help"}}
	}
	return plan, Audit(s.p, plan)
}

func ways(p *Problem) []way {
	var out []way
	for i, t := range p.Tanks {
		out = append(out, way{limit: t.ID, most: 1000 * t.Capacity, give: func(p *Problem, by float64) { widen(&p.Tanks[i], by) }})
	}
	return append(out,
		way{"km", true, 100 * p.LengthKm, func(p *Problem, by float64) { p.Drive.MaxKmPerDay += by }},
		way{"min", true, 100000, func(p *Problem, by float64) { p.Drive.MaxMinPerDay += by }},
		way{"nights", true, 1000, func(p *Problem, by float64) {
			if r := p.Nights; r != nil {
				n := int(math.Ceil(by))
				p.Nights = &Range{max(0, r.Min-n), r.Max + n}
			}
		}},
		way{"open", true, 0, func(p *Problem, _ float64) {
			p.Stops = slices.Clone(p.Stops)
			for i := range p.Stops {
				p.Stops[i].Open = nil
			}
		}})
}

// text is what is wrong.
func (w way) text(missing float64) string {
	switch w.limit {
	case "km":
		return fmt.Sprintf("a day is too short by %.1f km", missing)
	case "min":
		return fmt.Sprintf("a day is too short by %.0f minutes", missing)
	case "nights":
		return fmt.Sprintf("the number of nights is off by %.0f", missing)
	case "open":
		return "a place that is needed is closed when it is reached"
	}
	return fmt.Sprintf("tank %s falls short by %.2f", w.limit, missing)
}

// widen gives the tank more headroom all the time.
func widen(t *Tank, by float64) {
	t.Capacity += by
	if t.Kind == Waste {
		if t.End != nil && t.End.AtMost != nil {
			most := *t.End.AtMost + by
			t.End = &End{AtMost: &most}
		}
		return
	}
	t.Start += by
}

// why gives way on one limit as little as is needed. ok is false if no plan
// turns up however much is given.
func (s *solver) why(ctx context.Context, w way) (r Reason, ok bool) {
	try := func(by float64) (Plan, bool) {
		q := *s.p
		q.Tanks = slices.Clone(q.Tanks)
		w.give(&q, by)
		return anyPlan(ctx, &q)
	}
	plan, ok := try(w.most)
	if !ok {
		return r, false
	}
	low, high := 0.0, w.most
	for n := 0; n < 40 && high-low > 1e-3*(0.1+high); n++ {
		mid := (low + high) / 2
		if low == 0 && high > 1 { // the scale is not known at first
			mid = high / 8
		}
		if better, ok := try(mid); ok {
			plan, high = better, mid
		} else {
			low = mid
		}
	}
	if w.limit == "nights" {
		high = math.Ceil(high)
	}
	r = Reason{Limit: w.limit, ToKm: s.p.LengthKm, Missing: high}
	_, err := Replay(s.p, plan.Visits)
	if b := (*Broken)(nil); errors.As(err, &b) {
		r.ToKm = b.Km
	}
	for _, v := range plan.Visits {
		restores := w.day && v.Night || slices.ContainsFunc(v.Serve, func(y Serve) bool { return y.Tank == w.limit })
		if restores && v.Arrive.Km < r.ToKm {
			r.FromKm = v.Arrive.Km
		}
	}
	r.Text = fmt.Sprintf("%s between km %.1f and km %.1f", w.text(r.Missing), r.FromKm, r.ToKm)
	return r, true
}

// anyPlan is some plan, if a narrow sweep finds one.
func anyPlan(ctx context.Context, p *Problem) (Plan, bool) {
	m := newModel(p)
	b := newBounds(m, m.worths())
	w := newSweep(m, b)
	if math.IsInf(w.root(), 1) || w.run(ctx, math.Inf(1), narrow, math.MaxInt) != nil || w.best < 0 {
		return Plan{}, false
	}
	plan, err := w.plan(w.best)
	return plan, err == nil
}
