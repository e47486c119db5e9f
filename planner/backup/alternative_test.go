package backup_test

import (
	"math"
	"slices"
	"testing"

	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
	"ullage/planner/replay"
	"ullage/planner/solve"
)

// TestAlternatives: no plan with one of the nights elsewhere is cheaper than
// the cheapest shown (brute force); each is a plan of the problem itself, and
// differs from the plan and the others in its nights or its number of stops.
func TestAlternatives(t *testing.T) {
	t.Parallel()
	nights, fewer := 0, 0
	for seed := range uint64(300) {
		p := plantest.Tiny(seed)
		if len(p.Stops) > 6 {
			continue // brute force solves several problems for each
		}
		plan := solved.Plan(t, p)
		got, err := backup.Alternatives(t.Context(), p, plan, 2, solve.Options{})
		if err != nil {
			t.Fatal(err)
		}
		want := math.Inf(1)
		for _, v := range plan.Visits {
			i := slices.IndexFunc(p.Stops, func(s planner.Stop) bool { return s.ID == v.Stop })
			if v.Night && !p.Stops[i].Required {
				want = min(want, plantest.Brute(withoutNight(p, i)))
			}
		}
		if len(got) == 0 || got[0].Plan.Cost > want && !plantest.Near(got[0].Plan.Cost, want) {
			if !math.IsInf(want, 1) {
				t.Errorf("seed %d: %+v, want one for %v", seed, got, want)
			}
		}
		seen := []string{look(p, plan)}
		for i, a := range got {
			if i > 0 && a.Extra < got[i-1].Extra-1e-9 {
				t.Errorf("seed %d: not cheapest first", seed)
			}
			if a.Without != "" {
				nights++
				if slices.ContainsFunc(a.Plan.Visits, func(v planner.Visit) bool { return v.Stop == a.Without && v.Night }) {
					t.Errorf("seed %d: the night is still at %s", seed, a.Without)
				}
			} else if fewer++; len(a.Plan.Visits) >= len(plan.Visits) {
				t.Errorf("seed %d: %d visits instead of %d", seed, len(a.Plan.Visits), len(plan.Visits))
			}
			again, err := replay.Plan(p, a.Plan.Visits)
			if err != nil || !plantest.Near(again.Cost, a.Plan.Cost) || !plantest.Near(a.Extra, again.Cost-plan.Cost) {
				t.Errorf("seed %d: replayed in the whole problem: %v, %v", seed, again.Cost, err)
			}
			if l := look(p, a.Plan); slices.Contains(seen, l) {
				t.Errorf("seed %d: nobody sees a difference: %s", seed, l)
			} else {
				seen = append(seen, l)
			}
		}
	}
	t.Logf("%d with another night, %d with fewer stops", nights, fewer)
	if nights < 5 || fewer < 5 {
		t.Error("want more to look at")
	}
}

// look is what a person sees at a glance.
func look(p *planner.Problem, plan planner.Plan) string {
	out := string(rune('0' + len(plan.Visits)))
	for _, v := range plan.Visits {
		if v.Night {
			out += " " + v.Stop
		}
	}
	return out
}

func withoutNight(p *planner.Problem, i int) *planner.Problem {
	q := *p
	q.Stops = slices.Clone(p.Stops)
	q.Stops[i].Night = nil
	q.Stops[i].Serves = slices.DeleteFunc(slices.Clone(q.Stops[i].Serves), func(x planner.Service) bool { return x.GuestsOnly })
	q.Unlisted(func(id string) bool { return id == q.Stops[i].ID })
	return &q
}
