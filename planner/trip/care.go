package trip

import (
	"context"
	"fmt"

	"ullage/planner"
)

// Care is what it costs to plan with more use than the likely one: what the
// plan costs more than the best plan for the likely use, if the use then is
// the likely one. Fuel that is not burnt is not counted.
type Care struct {
	Confidence float64 `json:"confidence"`
	Price      float64 `json:"price"` // ≥ 0
	Text       string  `json:"text"`  // one sentence
}

// care plans the trip once more with the likely use; nil where there is no
// difference to speak of, or no time.
func (b *Built) care(ctx context.Context, plan planner.Plan) *Care {
	c := b.Trip.Confident()
	if !b.use.lives || c <= 0.5 || ctx.Err() != nil {
		return nil
	}
	t := b.Trip
	t.Confidence = 0.5
	likely, err := Build(t, b.places, Options{Hours: b.hours, Roads: b.roads})
	if err != nil {
		return nil
	}
	best, _, err := likely.solve(ctx, planner.Options{MaxLabels: manyLabels})
	if err != nil || best.End == nil {
		return nil
	}
	visits, err := planner.Fit(likely.whole(), plan.Visits)
	if err != nil {
		return nil
	}
	careful, err := planner.Replay(likely.whole(), visits)
	if err != nil {
		return nil
	}
	out := &Care{Confidence: c, Price: max(careful.Cost-best.Cost, 0)}
	price := fmt.Sprintf("%.2f %s", out.Price, t.Currency)
	if plan.Status != planner.Optimal || best.Status != planner.Optimal {
		price = "about " + price
	}
	if out.Price < 0.005 {
		price = "nothing"
	}
	out.Text = fmt.Sprintf("Each tank is planned to last on %.0f of 100 such trips. A plan for the likely use, too little on every second trip, saves %s.", 100*c, price)
	return out
}
