package answer

import (
	"context"
	"fmt"

	"ullage/planner"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/read"
)

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
		if p.End == nil || b.audit(p) != nil {
			return
		}
		if it := read.Itinerary(b.Built, p, nil); b.sheet(it) == nil {
			opt.Progress(it)
		}
	}
	b, plan, closed, err := b.eased(ctx, opt.Solve)
	if err == nil {
		err = b.audit(plan)
	}
	if err != nil {
		return trip.Itinerary{}, fmt.Errorf("plan %q: %w", b.Trip.Name, err)
	}
	if plan.End == nil {
		return b.refuse(ctx, read.Itinerary(b.Built, plan, closed), plan, opt)
	}
	l, err := b.lived(ctx, plan, closed)
	if err == nil {
		err = b.audit(l.plan)
	}
	if err != nil {
		return trip.Itinerary{}, fmt.Errorf("plan %q as people drive it: %w", b.Trip.Name, err)
	}
	it := read.Itinerary(b.Built, l.plan, l.closed)
	if it.Least, it.Status = l.least, l.status; it.Least == nil {
		it.Status = plan.Status
	}
	if err := b.sheet(it); err != nil {
		return trip.Itinerary{}, fmt.Errorf("plan %q: %w", b.Trip.Name, err)
	}
	if opt.Answer != nil {
		opt.Answer(it)
	}
	return b.more(ctx, it, l.exact, opt.Answer)
}

// more adds to a plan what a person asks next: what caution and safety cost,
// and which other plans there are; tell, if not nil, hears of each as it comes.
func (b asker) more(ctx context.Context, it trip.Itinerary, plan planner.Plan, tell func(trip.Itinerary)) (trip.Itinerary, error) {
	if ctx.Err() != nil {
		return it, nil
	}
	if tell == nil {
		tell = func(trip.Itinerary) {}
	}
	caution := b.care(plan)
	if it.Care = caution.glance(ctx); it.Care != nil {
		tell(it)
	}
	var err error
	if it.Safety, err = b.safety(ctx, plan); err != nil {
		return trip.Itinerary{}, err
	}
	if it.Safety != nil {
		tell(it)
	}
	if price := caution.price(ctx); price != nil {
		it.Care = price
		tell(it)
	}
	it.Others, err = b.others(ctx, plan)
	if err != nil {
		return trip.Itinerary{}, err
	}
	return it, nil
}
