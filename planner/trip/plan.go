package trip

import (
	"context"
	"fmt"
	"slices"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/backup"
	"ullage/planner/reason"
	"ullage/planner/solve"
)

// keepWithin is the share of the least cost that staying with a plan in use
// may cost more. Own choice: some euros on a trip of some days.
const keepWithin = 0.01

// manyLabels bounds each of the problems that are solved to find other plans,
// fewLabels those to explain a refusal: there are dozens, and none need be proven.
const (
	manyLabels = 20_000
	fewLabels  = 5_000
)

// Plan makes a trip into a problem, solves it, has the answer audited and
// reads it back. Better plans found on the way go to opt.Progress, audited as
// well. If ctx ends first, the best plan so far comes back with a status that
// says how far it can be off; if there is none, the status is unknown.
func Plan(ctx context.Context, t Trip, places []Place, opt Options) (Itinerary, error) {
	b, err := Build(t, places, opt)
	if err != nil {
		return Itinerary{}, err
	}
	return b.Plan(ctx, opt)
}

// Plan solves, audits and reads back what was built. A plan in use is kept
// where it can be (Trip.Keep), and with backup the trip survives closures as
// far as a way is found. What ctx leaves no time for is left out, other plans
// and the price of safety first.
func (b *Built) Plan(ctx context.Context, opt Options) (Itinerary, error) {
	if opt.Progress == nil {
		opt.Progress = func(Itinerary) {}
	}
	opt.Solve.Progress = func(p planner.Plan) {
		if p.End != nil && b.audit(p) == nil {
			opt.Progress(b.read(p, nil))
		}
	}
	plan, closed, err := b.solve(ctx, opt.Solve)
	if err == nil {
		err = b.audit(plan)
	}
	if err != nil {
		return Itinerary{}, fmt.Errorf("plan %q: %w", b.Trip.Name, err)
	}
	it := b.read(plan, byStop(closed))
	if plan.End == nil {
		return b.refuse(ctx, it, opt)
	}
	if opt.Answer != nil {
		opt.Answer(it)
	}
	return b.more(ctx, it, opt.Answer)
}

// solve finds a plan, and what becomes of it if a place is closed.
func (b *Built) solve(ctx context.Context, opt solve.Options) (planner.Plan, []backup.Closure, error) {
	use := backup.Steady{Stops: b.Trip.Keep, Within: keepWithin}
	if b.Trip.Backup {
		return backup.Survive(ctx, b.Problem, b.whole(), use, opt)
	}
	plan, err := backup.SolveSteady(ctx, b.Problem, use, opt)
	if err != nil || plan.End == nil {
		return plan, nil, err
	}
	return plan, backup.Closures(b.whole(), plan), nil
}

func (b *Built) audit(p planner.Plan) error {
	if err := audit.Check(b.Problem, p); err != nil {
		return fmt.Errorf("the answer does not pass the audit: %w", err)
	}
	return nil
}

// refuse says why there is no plan, what would help, and what comes nearest.
func (b *Built) refuse(ctx context.Context, it Itinerary, opt Options) (Itinerary, error) {
	if b.apart != "" { // nothing about its tanks would be news
		it.Why = []planner.Reason{{Limit: limitMap, ToKm: it.LengthKm, Text: b.apart}}
		it.Cautions = slices.DeleteFunc(slices.Clone(it.Cautions), func(c string) bool { return c == b.apart })
		return it, nil
	}
	opt.Progress(it)
	_, nearest, err := reason.Refuse(ctx, b.Problem, it.plan, solve.Options{MaxLabels: fewLabels}, func(reasons []planner.Reason) {
		if len(reasons) > 0 {
			it.Why = b.why(reasons)
		}
		opt.Progress(it)
		if cures := b.tripCures(ctx); len(it.Why) > 0 && len(cures) > 0 {
			it.Why[0].Cures = append(it.Why[0].Cures, cures...)
			opt.Progress(it)
		}
	})
	if err != nil {
		return Itinerary{}, fmt.Errorf("plan %q: %w", b.Trip.Name, err)
	}
	it.Nearest = b.nearest(nearest)
	return it, nil
}
