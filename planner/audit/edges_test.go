package audit_test

import (
	"errors"
	"math"
	"testing"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/replay"
)

// edge is 200 km in two days of 100 km and 100 minutes, with a night at km 100. The
// tray dries as one drives: its 1 L is gone after 10 km.
func edge() (*planner.Problem, []planner.Visit) {
	p := &planner.Problem{
		Format: planner.ProblemFormat, LengthKm: 200, TimeCostPerH: 60,
		Drive: planner.Drive{MaxKmPerDay: 100, MaxMinPerDay: 100, Pace: []planner.Pace{{ToKm: 200, MinPerKm: 1}}},
		Tanks: []planner.Tank{
			{ID: "fuel", Kind: planner.Supply, Capacity: 30, Reserve: 3, Start: 30, PerKm: 0.1},
			{ID: "tray", Kind: planner.Waste, Capacity: 20, Start: 1, PerKm: -0.1},
		},
		Stops: []planner.Stop{
			{ID: "a", Km: 50, Serves: []planner.Service{{Tank: "fuel", Price: 2}}},
			{ID: "n", Km: 100, Serves: []planner.Service{{Tank: "tray"}}, Night: &planner.Night{Nights: 1, Use: map[string]float64{"tray": 2}}},
		},
	}
	return p, []planner.Visit{{Stop: "a", Serve: []planner.Serve{{Tank: "fuel", Amount: 5}}}, {Stop: "n", Night: true, Serve: []planner.Serve{{Tank: "tray", Amount: 2}}}}
}

// TestEdges: what just meets a limit passes, what misses it by a thousandth does not.
func TestEdges(t *testing.T) {
	for _, tc := range []struct {
		name string
		rule planner.Rule // "": all is well
		do   func(p *planner.Problem, v []planner.Visit)
	}{
		{"all as it is", "", func(*planner.Problem, []planner.Visit) {}},
		{"a day too long", planner.RuleDayMin, func(p *planner.Problem, _ []planner.Visit) { p.Drive.MaxMinPerDay = 99.999 }},
		{"a day too far", planner.RuleDayKm, func(p *planner.Problem, _ []planner.Visit) { p.Drive.MaxKmPerDay = 99.999 }},
		{"just open", "", func(p *planner.Problem, _ []planner.Visit) { p.Stops[0].Open = [][2]float64{{0, 50}} }},
		{"just opened", "", func(p *planner.Problem, _ []planner.Visit) { p.Stops[0].Open = [][2]float64{{50, 50}} }},
		{"just closed", planner.RuleOpen, func(p *planner.Problem, _ []planner.Visit) { p.Stops[0].Open = [][2]float64{{0, 49.999}} }},
		{"open now and later", "", func(p *planner.Problem, _ []planner.Visit) { p.Stops[0].Open = [][2]float64{{0, 55}, {90, 95}} }},
		{"in before the next departure", "", func(p *planner.Problem, _ []planner.Visit) {
			p.Drive.MaxMinPerDay, p.Stops[1].Open = 5000, [][2]float64{{1440, 1440}}
		}},
		{"in after the next departure", planner.RuleNight, func(p *planner.Problem, _ []planner.Visit) {
			p.Drive.MaxMinPerDay, p.Stops[1].Open = 5000, [][2]float64{{1440.001, 1441}}
		}},
		{"in after one of two departures", "", func(p *planner.Problem, _ []planner.Visit) {
			p.Drive.MaxMinPerDay, p.Stops[1].Open, p.Stops[1].Night.Nights = 5000, [][2]float64{{2000, 2000}}, 2
		}},
		{"a little over capacity", planner.RuleCapacity, func(_ *planner.Problem, v []planner.Visit) { v[0].Serve[0].Amount = 5.001 }},
		{"a tray that dries by night", "", func(p *planner.Problem, v []planner.Visit) {
			p.Stops[1].Night.Use["tray"], v[1].Serve[0].Amount = -2, 0
		}},
		{"one night too many", planner.RuleNights, func(p *planner.Problem, _ []planner.Visit) { p.Nights = &planner.Range{} }},
		{"one night too few", planner.RuleNights, func(p *planner.Problem, _ []planner.Visit) { p.Nights = &planner.Range{Min: 2, Max: 2} }},
	} {
		t.Run(tc.name, func(t *testing.T) {
			p, visits := edge()
			good, err := replay.Plan(p, visits)
			if err != nil {
				t.Fatal(err)
			}
			tc.do(p, visits)
			if err := p.Validate(); err != nil {
				t.Fatal(err)
			}
			plan, err := replay.Plan(p, visits)
			for who, err := range map[string]error{"replay": err, "audit": audited(p, good, visits)} {
				var b *planner.Broken
				if tc.rule == "" && err != nil || tc.rule != "" && (!errors.As(err, &b) || b.Rule != tc.rule) {
					t.Errorf("%s: %v, want rule %q", who, err, tc.rule)
				}
			}
			if tc.rule == "" {
				if err := audit.Check(p, plan); err != nil {
					t.Errorf("audit of what replay states: %v", err)
				}
			}
		})
	}
}

// TestStatedEdges: a bound may be above the cost by rounding, no more; no number may
// be off by more than a file's rounding; and no amount is without end.
func TestStatedEdges(t *testing.T) {
	for _, tc := range []struct {
		name string
		rule planner.Rule
		do   func(x *planner.Plan)
	}{
		{"bound above by rounding", "", func(x *planner.Plan) { x.Bound = x.Cost + 1e-10 }},
		{"a level off by 5e-5", planner.RuleMoment, func(x *planner.Plan) { x.Visits[0].Arrive.Levels["fuel"] += 5e-5 }},
		{"an endless amount", planner.RuleAmount, func(x *planner.Plan) { x.Visits[0].Serve[0].Amount = math.Inf(1) }},
		{"no plan, with a cost", planner.RuleStatus, func(x *planner.Plan) {
			*x = planner.Plan{Format: planner.PlanFormat, Status: planner.Unknown, Cost: 1}
		}},
	} {
		t.Run(tc.name, func(t *testing.T) {
			p, visits := edge()
			plan, err := replay.Plan(p, visits)
			if err != nil {
				t.Fatal(err)
			}
			tc.do(&plan)
			var b *planner.Broken
			if err := audit.Check(p, plan); tc.rule == "" && err != nil || tc.rule != "" && (!errors.As(err, &b) || b.Rule != tc.rule) {
				t.Errorf("%v, want rule %q", err, tc.rule)
			}
		})
	}
}
