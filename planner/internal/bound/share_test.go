package bound

import (
	"math"
	"testing"

	"ullage/planner/internal/model"
	"ullage/planner/internal/plantest"
)

// TestShares: the shares of a visit add up to what it costs, none is below
// nothing, and what a tank gives away leaves its own bound of the whole trip as it was.
func TestShares(t *testing.T) {
	given := 0.0
	for file, p := range plantest.BoundProblems(t) {
		m := model.New(p)
		worth, atNight, single := Worths(m), BindingTanks(m), singleTanks(m)
		s := newShares(m, worth, atNight, single)
		for k, tank := range single {
			start := model.NewState(len(m.Tanks))
			for u := range m.Tanks {
				start.Hand[u] = m.Tanks[u].Start
			}
			paid := newTank(m, tank, worth, s.of[k+1], nil).From(start, 0)
			gives := s.gives(k + 1)
			after := newTank(m, tank, worth, s.of[k+1], func(i int, spare float64) float64 {
				given += spare
				return gives(i, spare)
			}).From(start, 0)
			if math.Abs(after-paid) > 1e-6*(1+math.Abs(paid)) {
				t.Errorf("%s: the bound of tank %d is %v before giving, %v after", file, tank, paid, after)
			}
		}
		for i := range m.Stops {
			sum, visit := 0.0, visitCost(m, &m.Stops[i], worth)
			for g := range s.of {
				sum += s.of[g][i]
				if s.of[g][i] < -1e-9 {
					t.Errorf("%s: group %d has a share of %v of stop %d", file, g, s.of[g][i], i)
				}
			}
			if math.Abs(sum-visit) > 1e-9*(1+visit) {
				t.Errorf("%s: the shares of stop %d add up to %v, the visit costs %v", file, i, sum, visit)
			}
		}
	}
	if given == 0 {
		t.Error("nothing was given in any of these problems")
	}
}
