package habit

import (
	"context"
	"math"

	"ullage/planner"
	"ullage/planner/solve"
)

const (
	// Of all plans within evenShare of the least cost, or evenMoney if that is more, the one
	// with the shortest longest day is wanted. Own choice.
	evenShare, evenMoney = 0.02, 5.0
	// evenTries is how many limits of a day are tried, evenKm how finely.
	evenTries, evenKm = 3, 5.0
	// uneven: only a day that is so much longer than the mean is worth a search.
	uneven = 1.1
)

// Even looks for a plan whose longest day is shorter, at hardly more than the cost of
// the plan: limits of a day are tried between the mean of the plan's days and its longest.
// The answer is a plan of p; it is Optimal if no plan with days of at most its longest
// costs less. If none is found it is the plan itself.
//
// It solves up to evenTries problems; opt bounds each.
func Even(ctx context.Context, p *planner.Problem, plan planner.Plan, opt solve.Options) (planner.Plan, error) {
	opt.Progress = nil
	longest, mean := days(p, plan)
	if plan.End == nil || longest <= uneven*mean {
		return plan, nil
	}
	most := plan.Cost + math.Max(evenShare*plan.Cost, evenMoney)
	best, low := plan, mean
	opt.Most = most
	for range evenTries {
		if ctx.Err() != nil || longest-low < math.Max(evenKm, 0.03*longest) {
			break
		}
		q := *p
		q.Drive.MaxKmPerDay = (low + longest) / 2
		if least := planner.Shortfall(&q); len(least) > 0 {
			low = q.Drive.MaxKmPerDay
			continue
		}
		other, err := solve.Solve(ctx, &q, opt)
		if err != nil {
			return planner.Plan{}, err
		}
		if other.End == nil || other.Cost > most {
			low = q.Drive.MaxKmPerDay
			continue
		}
		best = other
		longest, _ = days(p, other)
	}
	return best, nil
}

// Longest day of a plan, in km, detours included.
func Longest(p *planner.Problem, plan planner.Plan) float64 {
	longest, _ := days(p, plan)
	return longest
}

// days are the longest day of a plan and the mean of those with driving, in km.
func days(p *planner.Problem, plan planner.Plan) (longest, mean float64) {
	km, at, sum, n := 0.0, 0.0, 0.0, 0.0
	end := func() {
		if longest = math.Max(longest, km); km > 0 {
			sum, n = sum+km, n+1
		}
		km = 0
	}
	for _, v := range plan.Visits {
		s := p.Stop(v.Stop)
		km += s.Km - at + s.DetourKm/2
		at = s.Km
		if v.Night {
			end()
		}
		km += s.DetourKm / 2
	}
	km += p.LengthKm - at
	end()
	return longest, sum / math.Max(n, 1)
}
