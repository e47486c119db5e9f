package answer

import (
	"context"
	"fmt"

	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/fact"
	"ullage/planner/solve"
	"ullage/planner/trip"
)

// Kinds of what it costs to survive one closed place.
const (
	safetyNone  fact.Kind = "safety.none"
	safetyCosts fact.Kind = "safety.costs" // the plan does
	safetyWould fact.Kind = "safety.would" // another would
)

// safety is what a plan that survives one closed place costs more; nil if that was not found out.
func (b asker) safety(ctx context.Context, plan planner.Plan) (*trip.Safety, error) {
	s, ok, err := backup.PriceOfSafety(ctx, b.Problem, b.Whole(), plan, solve.Options{})
	switch {
	case err != nil:
		return nil, fmt.Errorf("plan %q without a closed place: %w", b.Trip.Name, err)
	case !ok:
		return nil, nil
	}
	return &trip.Safety{Price: s.Price(), Says: b.safetySays(s)}, nil
}

func (b asker) safetySays(s backup.Safety) fact.Fact {
	if s.None {
		return fact.Of(safetyNone, nil)
	}
	v := fact.V{"sum": some(s.Price(), b.Trip.Currency), "n": fact.Count(s.Exposed), "how": fact.Text("")}
	if !s.Proven {
		v["how"] = fact.Text("about")
	}
	if b.Trip.Backup {
		return fact.Of(safetyCosts, v)
	}
	return fact.Of(safetyWould, v)
}

// some is a sum; nothing where it rounds to none.
func some(sum float64, currency string) fact.Value {
	if sum < 0.005 {
		return fact.Value{}
	}
	return fact.Money(sum, currency)
}
