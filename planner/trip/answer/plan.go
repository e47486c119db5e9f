package answer

import (
	"context"
	"fmt"
	"slices"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/backup"
	"ullage/planner/reason"
	"ullage/planner/solve"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/read"
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

// Options of [Trip] and [Plan]. The zero value is valid.
type Options struct {
	Build    build.Options        // of [Trip] only
	Solve    solve.Options        // its Progress is replaced if Progress is set
	Progress func(trip.Itinerary) // called with each better plan; nil: not called
	Answer   func(trip.Itinerary) // called with the answer before Safety and Others are looked for, and once more between them; nil: not called
}

// Trip makes a trip into a problem, solves it, has the answer audited and
// reads it back. Better plans found on the way go to opt.Progress, audited as
// well. If ctx ends first, the best plan so far comes back with a status that
// says how far it can be off; if there is none, the status is unknown.
func Trip(ctx context.Context, t trip.Trip, places []trip.Place, opt Options) (trip.Itinerary, error) {
	b, err := build.Trip(t, places, opt.Build)
	if err != nil {
		return trip.Itinerary{}, err
	}
	return Plan(ctx, b, opt)
}

// An asker asks for plans of one built trip.
type asker struct{ *build.Built }

// Plan solves, audits and reads back what was built. A plan in use is kept
// where it can be ([trip.Trip.Keep]), and with backup the trip survives closures as
// far as a way is found. What ctx leaves no time for is left out, other plans
// and the price of safety first.
func Plan(ctx context.Context, built *build.Built, opt Options) (trip.Itinerary, error) {
	b := asker{built}
	if opt.Progress == nil {
		opt.Progress = func(trip.Itinerary) {}
	}
	opt.Solve.Progress = func(p planner.Plan) {
		if p.End != nil && b.audit(p) == nil {
			opt.Progress(read.Closed(b.Built, p, nil))
		}
	}
	plan, closed, err := b.solve(ctx, opt.Solve)
	if err == nil {
		err = b.audit(plan)
	}
	if err != nil {
		return trip.Itinerary{}, fmt.Errorf("plan %q: %w", b.Trip.Name, err)
	}
	it := read.Closed(b.Built, plan, closed)
	if plan.End == nil {
		return b.refuse(ctx, it, plan, opt)
	}
	if opt.Answer != nil {
		opt.Answer(it)
	}
	return b.more(ctx, it, plan, opt.Answer)
}

// solve finds a plan, and what becomes of it if a place is closed.
func (b asker) solve(ctx context.Context, opt solve.Options) (planner.Plan, []backup.Closure, error) {
	use := backup.Steady{Stops: b.Trip.Keep, Within: keepWithin}
	if b.Trip.Backup {
		return backup.Survive(ctx, b.Problem, b.Whole(), use, opt)
	}
	plan, err := backup.SolveSteady(ctx, b.Problem, use, opt)
	if err != nil || plan.End == nil {
		return plan, nil, err
	}
	return plan, backup.Closures(b.Whole(), plan), nil
}

func (b asker) audit(p planner.Plan) error {
	if err := audit.Check(b.Problem, p); err != nil {
		return fmt.Errorf("the answer does not pass the audit: %w", err)
	}
	return nil
}

// refuse says why there is no plan, what would help, and what comes nearest.
func (b asker) refuse(ctx context.Context, it trip.Itinerary, plan planner.Plan, opt Options) (trip.Itinerary, error) {
	if b.Apart != "" { // nothing about its tanks would be news
		it.Why = []trip.Reason{{Reason: planner.Reason{Limit: read.LimitMap, ToKm: it.LengthKm}, Text: b.Apart}}
		it.Cautions = slices.DeleteFunc(slices.Clone(it.Cautions), func(c string) bool { return c == b.Apart })
		return it, nil
	}
	opt.Progress(it)
	_, nearest, err := reason.Refuse(ctx, b.Problem, plan, solve.Options{MaxLabels: fewLabels}, func(reasons []planner.Reason) {
		if len(reasons) > 0 {
			it.Why = read.Why(b.Built, reasons)
		}
		opt.Progress(it)
		if cures := b.tripCures(ctx); len(it.Why) > 0 && len(cures) > 0 {
			it.Why[0].Cures = append(it.Why[0].Cures, cures...)
			opt.Progress(it)
		}
	})
	if err != nil {
		return trip.Itinerary{}, fmt.Errorf("plan %q: %w", b.Trip.Name, err)
	}
	it.Nearest = b.nearest(nearest)
	return it, nil
}
