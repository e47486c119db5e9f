package answer

import (
	"context"
	"fmt"
	"slices"
	"ullage/planner"
	"ullage/planner/reason"
	"ullage/planner/solve"
	"ullage/planner/trip"
	"ullage/planner/trip/read"
)

// refuse says why there is no plan, what would help, and what comes nearest.
func (b asker) refuse(ctx context.Context, it trip.Itinerary, plan planner.Plan, opt Options) (trip.Itinerary, error) {
	if !b.Apart.Nothing() { // nothing about its tanks would be news
		it.Why = []trip.Reason{{Reason: planner.Reason{Limit: read.LimitMap, ToKm: it.LengthKm}, Says: b.Apart}}
		it.Cautions = slices.DeleteFunc(slices.Clone(it.Cautions), b.Apart.Equal)
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

// nearest is what breaks least; nil of nil.
func (b asker) nearest(n *reason.Nearest) *trip.Nearest {
	if n == nil {
		return nil
	}
	out := &trip.Nearest{Days: b.lines(n.Visits)}
	for _, r := range read.Why(b.Built, n.Broken) {
		out.Broken = append(out.Broken, r.Says)
	}
	return out
}
