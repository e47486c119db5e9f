package answer

import (
	"context"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/replay"
	"ullage/planner/solve"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
)

// glanceLabels bound a first look at the likely use: a bound of its least cost
// takes milliseconds, the plan itself can take ten times as long as the trip's own.
const glanceLabels = 1_000

// care looks into what the caution costs by planning the trip once more with
// the likely use. nil: there is no difference to speak of.
func (b asker) care(plan planner.Plan) *caution {
	c := b.Trip.Confident()
	if !b.Use.Lives || c <= 0.5 {
		return nil
	}
	t := b.Trip
	t.Confidence = 0.5
	likely, err := b.again(t)
	if err != nil {
		return nil
	}
	visits, err := replay.Fit(likely.Whole(), plan.Visits)
	if err != nil {
		return nil
	}
	careful, err := replay.Plan(likely.Whole(), visits)
	if err != nil {
		return nil
	}
	return &caution{likely, careful.Cost, c, plan.Status == planner.Optimal}
}

// A caution is a trip with the likely use, and what the careful plan costs then.
type caution struct {
	likely     *build.Built
	careful    float64
	confidence float64
	proven     bool // no plan for the whole trip is cheaper
}

// glance is what the caution costs at most; nil if nothing is known yet.
func (c *caution) glance(ctx context.Context) *trip.Care {
	if c == nil || ctx.Err() != nil {
		return nil
	}
	best, err := solve.Solve(ctx, c.likely.Problem, solve.Options{MaxLabels: glanceLabels})
	if err != nil || !(best.Bound > 0) {
		return nil
	}
	if best.Status == planner.Optimal && !c.likely.Trip.Backup {
		return c.say(best.Cost, "")
	}
	return c.say(best.Bound, "most")
}

// price is what it costs; nil if ctx ends first, or no plan is found.
func (c *caution) price(ctx context.Context) *trip.Care {
	if c == nil || ctx.Err() != nil {
		return nil
	}
	best, _, err := asker{c.likely}.solve(ctx, solve.Options{MaxLabels: manyLabels})
	if err != nil || best.End == nil {
		return nil
	}
	if !c.proven || best.Status != planner.Optimal {
		return c.say(best.Cost, "about")
	}
	return c.say(best.Cost, "")
}

// careCosts is what the margin adds, which makes each tank last.
const careCosts fact.Kind = "care.costs"

// say is the price of caution where the best plan for the likely use costs so
// much; how is most, about, or "" for exactly.
func (c *caution) say(best float64, how string) *trip.Care {
	out := &trip.Care{Confidence: c.confidence, Price: max(c.careful-best, 0), AtMost: how == "most"}
	out.Says = fact.Of(careCosts, fact.V{"trips": fact.Count(int(100*c.confidence + 0.5)), "sum": some(out.Price, c.likely.Trip.Currency), "how": fact.Text(how)})
	return out
}
