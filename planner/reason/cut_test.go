package reason_test

import (
	"slices"
	"testing"

	"ullage/planner"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
	"ullage/planner/reason"
	"ullage/planner/solve"
)

// Whenever time runs out, what is said is what would be said with all the time, or
// less: no other amount, no other place, no other nearest trip.
func TestRefuseCut(t *testing.T) {
	hours := gap()
	hours.Tanks[0].Start = 29
	hours.Stops[0].Open = [][2]float64{{0, 100}}
	var tiny []*planner.Problem
	for seed := uint64(0); len(tiny) < 4; seed++ {
		if p := plantest.Tiny(seed); solved.Plan(t, p).Status == planner.Infeasible {
			tiny = append(tiny, p)
		}
	}
	for k, p := range append(tiny, gap(), hours) {
		plan := solved.Plan(t, p)
		whole := plantest.Polls(1 << 40)
		all, nearest, err := reason.Refuse(whole, p, plan, solve.Options{}, nil)
		if err != nil {
			t.Fatal(err)
		}
		for n := 1; n < whole.Asked; n += 1 + whole.Asked/40 {
			some, near, err := reason.Refuse(plantest.Polls(n), p, plan, solve.Options{}, nil)
			if err != nil {
				t.Fatal(err)
			}
			for _, r := range some {
				i := slices.IndexFunc(all, func(x planner.Reason) bool { return x.Kind == r.Kind && x.Limit == r.Limit })
				if i < 0 || all[i].Missing != r.Missing || (r.FromKm > all[i].FromKm || r.ToKm < all[i].ToKm) || len(r.Changes) > len(all[i].Changes) {
					t.Fatalf("problem %d, cut at %d of %d: %+v of %+v", k, n, whole.Asked, r, all)
				}
			}
			if near != nil && near.Breach != nearest.Breach {
				t.Fatalf("problem %d, cut at %d of %d: %+v is nearest, it was %+v", k, n, whole.Asked, near, nearest)
			}
		}
	}
}
