package backup

import (
	"context"
	"errors"
	"math"
	"slices"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/solve"
)

// surviveRounds is how often a plan that does not survive a closure is
// planned anew with more in hand.
const surviveRounds = 10

// Survive is [SolveSteady] for a problem with backup, and then closes every stop of
// the plan ([Closures]). Spare headroom is a rule of thumb for one tank and
// one place; where the trip as a whole does not survive a closure, the stop
// must be reached with more in hand, or the trip end with more, or the stop does
// without what it was visited for, and the trip is solved again. The answer is the plan with the fewest
// closures not survived, with what becomes of it; it is a plan of p, its bound
// that of p.
//
// whole is p with all the stops that a closure may lead to; it must have p's.
// The other rules are those of [SolveSteady]; opt.Progress sees plans before their
// closures are looked at.
func Survive(ctx context.Context, p, whole *planner.Problem, use Steady, opt solve.Options) (planner.Plan, []Closure, error) {
	plan, err := SolveSteady(ctx, p, use, opt)
	if err != nil || plan.End == nil {
		return plan, nil, err
	}
	closures := Closures(whole, plan)
	opt.Progress = nil
	stricter, last, lastClosures := p.Clone(), plan, closures
	for range surviveRounds {
		if !tighten(stricter, last, lastClosures) || ctx.Err() != nil {
			break
		}
		if last, err = SolveSteady(ctx, stricter, use, opt); err != nil || last.End == nil {
			break
		}
		lastClosures = Closures(whole, last)
		if fatal(lastClosures) < fatal(closures) {
			plan, closures = bounded(last, plan.Bound), lastClosures
		}
	}
	if err == nil {
		err = audit.Check(p, plan)
	}
	return plan, closures, err
}

func fatal(closures []Closure) int {
	n := 0
	for _, c := range closures {
		if !c.Survived {
			n++
		}
	}
	return n
}

// tighten makes the problem refuse what a closure was not survived for; false
// if there is nothing to refuse.
func tighten(p *planner.Problem, plan planner.Plan, closures []Closure) bool {
	done := false
	for i, c := range closures {
		if c.Survived {
			continue
		}
		if endFuller(p, c.Err) {
			done = true
			continue
		}
		v := plan.Visits[i]
		s := p.Stop(v.Stop)
		s.Serves = slices.Clone(s.Serves)
		short, where := brokenTank(c.Err)
		j := slices.IndexFunc(s.Serves, func(x planner.Service) bool { return x.Tank == short })
		t := slices.IndexFunc(p.Tanks, func(t planner.Tank) bool { return t.ID == short })
		if j >= 0 && t >= 0 && slices.ContainsFunc(v.Serve, func(y planner.Serve) bool { return y.Tank == short }) {
			had := p.Tanks[t].Swap(v.Arrive.Levels[short])
			if more := math.Max(had, s.Serves[j].Spare) + math.Max(where, p.Tanks[t].Capacity/100); more <= p.Tanks[t].Capacity {
				s.Serves[j].Spare, done = more, true
				continue
			}
		}
		s.Serves = slices.DeleteFunc(s.Serves, func(x planner.Service) bool {
			return slices.ContainsFunc(v.Serve, func(y planner.Serve) bool { return y.Tank == x.Tank })
		})
		done = done || len(v.Serve) > 0
		if v.Night && !s.Required {
			s.Night, done = nil, true
			s.Serves = slices.DeleteFunc(s.Serves, func(x planner.Service) bool { return x.GuestsOnly })
			p.Unlisted(func(id string) bool { return id == v.Stop })
		}
	}
	return done
}

// endFuller asks for as much more at the end of the trip as a closure made miss
// there; false if that was not it, or the tank cannot hold it.
func endFuller(p *planner.Problem, err error) bool {
	var b *planner.Broken
	if !errors.As(err, &b) || b.Rule != planner.RuleEnd {
		return false
	}
	i := slices.IndexFunc(p.Tanks, func(t planner.Tank) bool { return t.ID == b.Tank })
	end := *p.Tanks[i].End
	if end.AtLeast == nil {
		return false
	}
	more := *end.AtLeast + b.Need - b.Have + planner.Tolerance
	if more > p.Tanks[i].Capacity {
		return false
	}
	end.AtLeast = &more
	p.Tanks[i].End = &end
	return true
}

// brokenTank is the tank that ran short, and by how much.
func brokenTank(err error) (tank string, missing float64) {
	var b *planner.Broken
	if !errors.As(err, &b) || b.Rule != planner.RuleReserve {
		return "", 0
	}
	return b.Tank, math.Abs(b.Need - b.Have)
}
