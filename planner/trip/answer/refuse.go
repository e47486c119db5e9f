package answer

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/reason"
	"ullage/planner/solve"
	"ullage/planner/trip"
	"ullage/planner/trip/read"
)

// refuse says why there is no plan, what would help, and what comes nearest.
func (b asker) refuse(ctx context.Context, it trip.Itinerary, plan planner.Plan, opt Options) (trip.Itinerary, error) {
	if !b.Apart.Nothing() { // nothing about its tanks would be news
		it.Why = []trip.Reason{{Reason: planner.Reason{Limit: read.LimitMap, ToKm: it.LengthKm}, Cause: trip.CauseData, Says: b.Apart}}
		it.Cautions = slices.DeleteFunc(slices.Clone(it.Cautions), b.Apart.Equal)
		return it, nil
	}
	r := &refusal{it: it, tell: opt.Progress}
	r.it.Why = nil // what is plain to see need not be the cause
	r.tell(r.it)
	r.trying = trying{asker: b, ctx: ctx, trial: reason.NewTrial(ctx, solve.Options{MaxLabels: fewLabels}), touched: opt.Touched, tell: r.helps}
	r.begin()
	_, nearest, err := reason.Refuse(ctx, b.Problem, plan, solve.Options{MaxLabels: fewLabels}, func(reasons []planner.Reason) {
		r.because(r.told(reasons))
		r.search()
	})
	if err = errors.Join(err, r.trial.Err()); err != nil {
		return trip.Itinerary{}, fmt.Errorf("plan %q: %w", b.Trip.Name, err)
	}
	if len(r.it.Why) == 0 {
		r.it.Why = it.Why // time ran out before more was known
	}
	r.it.Nearest = b.nearest(nearest)
	return r.it, nil
}

// A refusal is one while its reasons and cures are found.
type refusal struct {
	trying
	it      trip.Itinerary
	tell    func(trip.Itinerary)
	lacks   []lack
	lacking []trip.Reason
	whole   bool          // what the map data lack is all that stands in the way
	blame   []trip.Reason // wishes that are
}

// told are the reasons to be told, of those that the numbers give. Where the map data
// lack a place, that is how much is missing of it, and no cure is to travel less. What the
// data lack is not to blame where something else, changed by itself, gives a plan.
func (r *refusal) told(reasons []planner.Reason) []trip.Reason {
	if len(r.lacks) == 0 {
		return read.Why(r.Built, reasons)
	}
	if !r.whole {
		cures := func(w planner.Reason) bool {
			return slices.ContainsFunc(w.Changes, func(c planner.Change) bool { return c.Kind != planner.ChangeNightsLess })
		}
		if len(r.blame) > 0 || slices.ContainsFunc(reasons, cures) {
			return read.Why(r.Built, reasons)
		}
	}
	var out []planner.Reason
	for _, why := range reasons {
		of := slices.ContainsFunc(r.lacks, func(l lack) bool { return l.tank == why.Limit })
		night := why.Kind == planner.ReasonNightsLess && slices.ContainsFunc(r.lacks, func(l lack) bool { return l.tank == "" })
		if of || !r.whole && !night {
			why.Changes = slices.DeleteFunc(slices.Clone(why.Changes), staysLess)
			out = append(out, why)
		}
	}
	if r.whole {
		return read.Why(r.Built, out) // what is lacking was told
	}
	return append(slices.Clone(r.lacking), read.Why(r.Built, out)...)
}

// because tells reasons, the true cause first.
func (r *refusal) because(reasons []trip.Reason) {
	r.it.Why = slices.Concat(r.it.Why, r.blame, reasons)
	trip.ByCause(r.it.Why)
	r.tell(r.it)
}

func (r *refusal) helps(found []fact.Fact) {
	r.it.Cures = slices.Clone(found)
	if len(r.it.Why) > 0 {
		r.tell(r.it)
	}
}

// begin looks for what the map data lack, then tries what was just touched and
// which wishes are in the way.
func (r *refusal) begin() {
	r.lacks, r.whole = r.asker.lacks(r.ctx, r.trial)
	for _, l := range r.lacks {
		why := r.reasonOf(l)
		r.lacking = append(r.lacking, why)
		r.whole = r.whole && why.Cause == trip.CauseData
	}
	all := r.reliefs()
	for _, x := range all {
		if r.isTouched(x) {
			r.try(x)
		}
	}
	if r.whole {
		r.because(r.lacking)
		return
	}
	r.blame = append(r.blame, r.asker.firm(r.trial)...)
	for _, x := range all {
		if x.remedy != nil && x.remedy.wish != "" {
			r.try(x)
		}
	}
}

// try tries one relief: a wish without which there is a plan is to blame.
func (r *refusal) try(x relief) {
	cure := r.one(x)
	if cure.Nothing() {
		return
	}
	if reason, ok := r.blames(x, cure); ok && !r.whole {
		r.blame = append(r.blame, reason)
		return
	}
	r.keep(cure)
}

// search looks for what else would help, singly and in pairs.
func (r *refusal) search() {
	if r.ctx.Err() == nil {
		r.rings()
		for _, x := range r.reliefs() {
			if r.sensible(x) {
				r.try(x)
			}
		}
	}
	if len(r.cures()) < enoughCures {
		r.pairs()
	}
	if r.whole {
		for _, cure := range r.otherPlaces(r.lacks) {
			r.keep(cure)
		}
	}
	r.it.Tried = r.tried(len(r.cures()))
	r.tell(r.it)
}

// rings looks for whom to ring, about one need or about all of them.
func (r *refusal) rings() {
	needs := r.doubtful()
	helps := false
	for _, n := range needs {
		helps = r.keep(r.ring(r.trial, n)) || helps
	}
	if !helps && len(needs) > 1 {
		r.keep(r.ring(r.trial, needs...))
	}
}

// sensible says whether a relief is worth a try: not what the reasons' own cures
// said already, and where the map data lack a place not to travel less instead.
func (r *refusal) sensible(x relief) bool {
	if x.lever != nil && (r.whole || len(r.lacks) > 0 && x.lever.Kind == planner.ChangeNightsLess) {
		return false
	}
	return x.lever == nil || !slices.ContainsFunc(r.it.Why, func(w trip.Reason) bool {
		return slices.ContainsFunc(w.Changes, func(c planner.Change) bool { return c.Kind == x.lever.Kind && c.Tank == x.lever.Tank })
	})
}

// doubtful are the needs that it may help to ring places about: tanks that the
// reasons name, and hook-up where it is wished for.
func (r *refusal) doubtful() []need {
	var out []need
	for _, id := range trip.TankIDs() {
		named := slices.ContainsFunc(r.it.Why, func(w trip.Reason) bool { return w.Limit == id })
		if named || r.Trip.Stays.HookUp && trip.KindOfTank(id).ByNight {
			out = append(out, need{id})
		}
	}
	return out
}

// cures are all that are known, those of the reasons too.
func (r *refusal) cures() []fact.Fact {
	out := slices.Clone(r.found)
	for _, w := range r.it.Why {
		out = append(out, w.Cures...)
	}
	return out
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
