package answer

import (
	"context"
	"fmt"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/backup"
	"ullage/planner/solve"
	"ullage/planner/trip"
	sheet "ullage/planner/trip/audit"
	"ullage/planner/trip/build"
)

// Options of [Trip] and [Plan]. The zero value is valid.
type Options struct {
	Build    build.Options        // of [Trip] only
	Solve    solve.Options        // its Progress is replaced if Progress is set
	Progress func(trip.Itinerary) // called with each better plan; nil: not called
	Touched  []string             // fields of the form that were just changed: what else they could be is tried first where there is no plan
	Answer   func(trip.Itinerary) // called with the answer before Safety and Others are looked for, and once more between them; nil: not called
}

// keepWithin is the share of the least cost that staying with a plan in use
// may cost more. Own choice: some euros on a trip of some days.
const keepWithin = 0.01

// manyLabels bounds each of the problems that are solved to find other plans,
// fewLabels those to explain a refusal: there are dozens, and none need be proven.
const (
	manyLabels = 20_000
	fewLabels  = 5_000
)

// An asker asks the planner about one built trip.
type asker struct{ *build.Built }

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

// eases are what a trip gives up, one after the other, before it is refused: first
// moves of some length, and on the road, where somebody waits for an answer, the hour
// of the keys.
func (b asker) eases() []build.Ease {
	out := []build.Ease{{ShortMoves: true}}
	if b.Trip.DoneKm > 0 && b.Trip.KeysByMin > 0 {
		out = append(out, build.Ease{LateKeys: true}, build.Ease{ShortMoves: true, LateKeys: true})
	}
	return out
}

// eased solves what was built, with as little given up as there is a plan for. Where
// there is none it is what was built with all given up.
func (b asker) eased(ctx context.Context, opt solve.Options) (asker, planner.Plan, []backup.Closure, error) {
	plan, closed, err := b.solve(ctx, opt)
	for _, e := range b.eases() {
		if err != nil || plan.Status != planner.Infeasible || ctx.Err() != nil {
			break
		}
		b = asker{b.Eased(e)}
		plan, closed, err = b.solve(ctx, opt)
	}
	return b, plan, closed, err
}

func (b asker) audit(p planner.Plan) error {
	if err := audit.Check(b.Problem, p); err != nil {
		return fmt.Errorf("the answer does not pass the audit: %w", err)
	}
	return nil
}

// sheet is the first rule that an itinerary breaks: one that breaks any is shown to nobody.
func (b asker) sheet(it trip.Itinerary) error {
	if broken := sheet.Sheet(b.Trip, b.Places, it, sheet.Open(b.Hours)); len(broken) > 0 {
		return &broken[0]
	}
	return nil
}

// again builds the trip once more, changed.
func (b asker) again(t trip.Trip) (*build.Built, error) { return b.among(t, b.Places) }

// among builds a changed trip among other places.
func (b asker) among(t trip.Trip, places []trip.Place) (*build.Built, error) {
	return build.Trip(t, places, build.Options{Hours: b.Hours, Roads: b.Roads, MostStops: b.MostStops, Ease: b.Ease})
}
