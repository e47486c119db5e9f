package reason_test

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"ullage/data/problemfile"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
	"ullage/planner/reason"
	"ullage/planner/replay"
	"ullage/planner/solve"
)

func refuse(t *testing.T, p *planner.Problem) ([]planner.Reason, *reason.Nearest) {
	t.Helper()
	why, near, err := reason.Refuse(t.Context(), p, solved.Plan(t, p), solve.Options{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	return why, near
}

// gap needs 8 L more than the tank starts with; they are a little more than a
// quarter of the tank's 30 L. The day's limits are kept.
func TestNearestTank(t *testing.T) {
	_, n := refuse(t, gap())
	if n == nil || len(n.Broken) != 1 || n.Broken[0].Limit != "fuel" || !plantest.Near(n.Broken[0].Missing, 8) || !plantest.Near(n.Breach, 8.0/30) {
		t.Fatalf("%+v, want 8 L of fuel", n)
	}
	// 250 km take 25 of the 20 L: 5 below empty, 8 below the reserve.
	if got := n.Visits[0].Arrive.Levels["fuel"]; n.Visits[0].Stop != "b" || !plantest.Near(got, -5) {
		t.Errorf("arrives at %s with %v, want b with -5", n.Visits[0].Stop, got)
	}
	if b := n.Broken[0]; b.FromKm != 0 || b.ToKm != 250 || b.Kind != planner.ReasonTank {
		t.Errorf("%+v, want the stretch from 0 to 250", b)
	}
}

// Two tanks of one litre each are short: no single limit is to blame, the
// nearest trip breaks both and nothing else.
func TestNearestOfTwoTanks(t *testing.T) {
	p := gap()
	p.Tanks[0].Start = 27
	p.Tanks = append(p.Tanks, planner.Tank{ID: "gas", Kind: planner.Supply, Capacity: 10, Start: 5, PerKm: 0.02})
	p.Stops = p.Stops[1:] // nobody sells anything: 30 L of fuel and 6 of gas are used
	why, n := refuse(t, p)
	if reasonFor(why, "fuel") == nil || reasonFor(why, "gas") == nil {
		t.Errorf("%+v, want both tanks named", why)
	}
	if n == nil || len(n.Broken) != 2 || !plantest.Near(n.Breach, 6.0/30+1.0/10) {
		t.Fatalf("%+v, want 6 L of fuel and 1 of gas", n)
	}
	if got := n.End.Levels; !plantest.Near(got["fuel"], -3) || !plantest.Near(got["gas"], -1) {
		t.Errorf("ends with %v, want -3 and -1", got)
	}
}

// TestNearestIsNoPlan: whatever breaks least still breaks something, says so,
// and the auditor refuses it under every status; so does what reads plans.
// Where one tank gives way, brute force finds no plan if it gives way less.
func TestNearestIsNoPlan(t *testing.T) {
	seen, tanks := 0, 0
	for seed := range uint64(240) {
		p := plantest.Tiny(seed)
		if len(p.Stops) > 6 {
			continue
		}
		plantest.Scarcer(p, seed)
		why, n := refuse(t, p)
		if (n != nil) && len(why) == 0 {
			t.Errorf("seed %d: a nearest trip without a reason", seed)
		}
		if n == nil {
			continue
		}
		seen++
		if len(n.Broken) == 0 || !(n.Breach > 0) || n.Format != reason.NearestFormat {
			t.Errorf("seed %d: %+v", seed, n)
		}
		for _, status := range []planner.Status{planner.Optimal, planner.Feasible, planner.Infeasible, planner.Unknown} {
			if audit.Check(p, planner.Plan{Format: planner.PlanFormat, Status: status, Cost: n.Cost, Bound: n.Cost, Visits: n.Visits, End: &n.End, Parts: &planner.CostParts{Goods: n.Cost}}) == nil {
				t.Errorf("seed %d: passes as a plan: %+v", seed, n)
			}
		}
		if _, err := replay.Plan(p, n.Visits); err == nil {
			t.Errorf("seed %d: can be driven: %+v", seed, n)
		}
		text, err := json.Marshal(n)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := problemfile.DecodePlan("nearest.json", text); err == nil {
			t.Errorf("seed %d: is read as a plan", seed)
		}
		if i := slices.IndexFunc(p.Tanks, func(t planner.Tank) bool { return t.ID == n.Broken[0].Limit }); i >= 0 && len(n.Broken) == 1 && p.Tanks[i].End == nil {
			tanks++
			x := n.Breach * p.Tanks[i].Capacity
			if cost := plantest.Brute(largerBy(p, i, x-0.11)); !math.IsInf(cost, 1) {
				t.Errorf("seed %d: %s could give way by less than %v", seed, p.Tanks[i].ID, x)
			}
			if cost := plantest.Brute(largerBy(p, i, x)); !plantest.Near(cost, n.Cost) {
				t.Errorf("seed %d: costs %v, brute force %v", seed, n.Cost, cost)
			}
		}
	}
	t.Logf("%d nearest trips, %d with one tank", seen, tanks)
	if seen < 40 || tanks < 10 {
		t.Error("want more to look at")
	}
}

func largerBy(p *planner.Problem, tank int, x float64) *planner.Problem {
	q := *p
	q.Tanks = slices.Clone(p.Tanks)
	q.Tanks[tank].Capacity += x
	if q.Tanks[tank].Kind == planner.Supply {
		q.Tanks[tank].Start += x
	}
	return &q
}

// A problem with a plan has no nearest one.
func TestNoNearestOfAPlan(t *testing.T) {
	if why, n := refuse(t, plantest.ReadCase(t, "t1")); n != nil || why != nil {
		t.Errorf("%+v %+v", why, n)
	}
}
