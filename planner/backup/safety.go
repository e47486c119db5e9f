package backup

import (
	"context"

	"ullage/planner"
	"ullage/planner/solve"
)

// Safety is what it costs that a plan survives a closed place.
type Safety struct {
	With    float64 `json:"with"`    // least cost with backup, as found
	Without float64 `json:"without"` // and without
	Proven  bool    `json:"proven"`  // neither can be less; else both are the best found
	None    bool    `json:"none"`    // it is proven that no plan has backup; With is 0
	Exposed int     `json:"exposed"` // stops of the plan with backup for which no way on was found all the same
}

// Price is what safety costs, ≥ 0; 0 where no plan has it.
func (s Safety) Price() float64 {
	if s.None {
		return 0
	}
	return max(0, s.With-s.Without)
}

// PriceOfSafety solves the problem of a plan once more, without backup if it
// has it and with ([Survive]) if not, to tell what that costs. ok is false if
// no plan of the other kind was found in the time given. The error is that of
// [solve.Solve].
func PriceOfSafety(ctx context.Context, p, whole *planner.Problem, plan planner.Plan, opt solve.Options) (s Safety, ok bool, err error) {
	opt.Progress = nil
	q, r := *p, *whole
	q.Backup, r.Backup = !p.Backup, !p.Backup
	var other planner.Plan
	if q.Backup {
		var closures []Closure
		other, closures, err = Survive(ctx, &q, &r, Steady{}, opt)
		s.With, s.Without, s.Exposed = other.Cost, plan.Cost, fatal(closures)
	} else {
		s.Exposed = fatal(Closures(whole, plan))
		other, err = solve.Solve(ctx, &q, opt)
		s.With, s.Without = plan.Cost, other.Cost
	}
	s.Proven = plan.Status == planner.Optimal && other.Status == planner.Optimal
	s.None = q.Backup && other.Status == planner.Infeasible
	return s, err == nil && (other.End != nil || s.None), err
}
