package audit_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
	"ullage/planner/replay"
)

// TestEveryRule breaks one rule at a time, and wants both replay and audit to
// name it.
func TestEveryRule(t *testing.T) {
	for _, tc := range []struct {
		name  string
		rule  planner.Rule
		stop  string
		tank  string
		short float64 // by how much, 0 where no number is meant
		do    func(p *planner.Problem, v []planner.Visit) []planner.Visit
	}{
		{"unknown stop", planner.RuleOrder, "x", "", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit { v[0].Stop = "x"; return v }},
		{"stop twice", planner.RuleOrder, "c", "", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit { return append(v, v[2]) }},
		{"backwards", planner.RuleOrder, "a", "", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			v[1].Serve[1].Amount = 19.01
			p.Tanks[0].Start = 30
			v[0].Serve = nil
			v[0], v[1] = v[1], v[0]
			return v
		}},
		{"equal km, not the list's order", planner.RuleOrder, "c", "", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			return []planner.Visit{v[0], v[1], {Stop: "d"}, v[2]}
		}},
		{"required stop left out", planner.RuleRequired, "c", "", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Stops[2].Required = true
			p.Tanks[0].Start = 22
			return v[:2]
		}},
		{"required night not taken", planner.RuleRequired, "d", "", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Stops[3].Required = true
			return append(v, planner.Visit{Stop: "d"})
		}},
		{"no night here", planner.RuleNight, "c", "", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit { v[2].Night = true; return v }},
		{"night after its own morning", planner.RuleNight, "b", "", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Drive.MaxMinPerDay = 5000
			p.Stops[0].Open = [][2]float64{{1980, 1980}} // 1980 + 8 + 3 + 60 + 4 is more than 1440 after 540
			return v
		}},
		{"not served here", planner.RuleService, "c", "water", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			v[2].Serve = []planner.Serve{{Tank: "water", Amount: 1}}
			return v
		}},
		{"served twice", planner.RuleService, "c", "fuel", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			v[2].Serve = []planner.Serve{{Tank: "fuel", Amount: 10}, {Tank: "fuel", Amount: 5}}
			return v
		}},
		{"guests only", planner.RuleService, "b", "cassette", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Stops[1].Required = false
			v[1].Night = false
			return v
		}},
		{"no amount", planner.RuleAmount, "c", "fuel", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit { v[2].Serve[0].Amount = 0; return v }},
		{"amount below nothing", planner.RuleAmount, "c", "fuel", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit { v[2].Serve[0].Amount = -1; return v }},
		{"amount not a number", planner.RuleAmount, "c", "fuel", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			v[2].Serve[0].Amount = math.NaN()
			return v
		}},
		{"waste not all", planner.RuleAmount, "b", "cassette", 0.05, func(p *planner.Problem, v []planner.Visit) []planner.Visit { v[1].Serve[1].Amount = 19; return v }},
		{"too full", planner.RuleCapacity, "a", "fuel", 0.3, func(p *planner.Problem, v []planner.Visit) []planner.Visit { v[0].Serve[0].Amount = 23.5; return v }},
		{"too full after the night", planner.RuleCapacity, "b", "water", 0.01, func(p *planner.Problem, v []planner.Visit) []planner.Visit { v[1].Serve[0].Amount = 85.01; return v }},
		{"dry on the way", planner.RuleReserve, "c", "fuel", 0.6, func(p *planner.Problem, v []planner.Visit) []planner.Visit { v[0].Serve[0].Amount = 6; return v }},
		{"waste over the reserve", planner.RuleReserve, "a", "cassette", 0.52, func(p *planner.Problem, v []planner.Visit) []planner.Visit { p.Tanks[2].Start = 18; return v }},
		{"dry by night", planner.RuleReserve, "b", "battery", 0.5, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Stops[1].Night.Use["battery"] = 60.5
			return v
		}},
		{"dry by night although filled", planner.RuleReserve, "b", "water", 1, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Tanks[1].Reserve = 26
			v[1].Serve[0].Amount = 10
			return v
		}},
		{"dry at the end", planner.RuleReserve, "", "fuel", 1.6, func(p *planner.Problem, v []planner.Visit) []planner.Visit { v[2].Serve = nil; return v }},
		{"no way to the next place", planner.RuleSpare, "a", "fuel", 0.2, func(p *planner.Problem, v []planner.Visit) []planner.Visit { p.Stops[0].Serves[0].Spare = 7; return v }},
		{"far by night", planner.RuleDayKm, "b", "", 1, func(p *planner.Problem, v []planner.Visit) []planner.Visit { p.Drive.MaxKmPerDay = 104; return v }},
		{"far at the end", planner.RuleDayKm, "", "", 1, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Stops[1].DetourKm = 12
			p.Stops[0].DetourKm = 0
			p.Drive.MaxKmPerDay = 106
			v[1].Serve[1].Amount = 19.06
			p.LengthKm = 201
			p.Drive.Pace[1].ToKm = 201
			return v
		}},
		{"long by night", planner.RuleDayMin, "b", "", 5, func(p *planner.Problem, v []planner.Visit) []planner.Visit { p.Drive.MaxMinPerDay = 130; return v }},
		{"long at the end", planner.RuleDayMin, "", "", 75, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Tanks[0].Start = 25
			v[0].Serve[0].Amount = 1
			v = v[:2]
			v[1].Night = false
			v[1].Serve = nil
			p.Stops[1].Required = false
			p.Nights = nil
			p.Tanks[1].End = nil
			p.Tanks[2].End = nil
			p.Drive.MaxMinPerDay = 182
			p.Drive.MaxKmPerDay = 500
			return v
		}},
		{"closed", planner.RuleOpen, "a", "", 3, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Stops[0].Open = [][2]float64{{0, 500}, {550, 590}}
			return v
		}},
		{"too few nights", planner.RuleNights, "", "", 1, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Nights = &planner.Range{Min: 2, Max: 3}
			return v
		}},
		{"too many nights", planner.RuleNights, "", "", 1, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Nights = &planner.Range{Min: 0, Max: 0}
			return v
		}},
		{"moved too little", planner.RuleMove, "d", "", 10, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Drive.MoveKm, p.Nights = 60, nil
			return append(v, planner.Visit{Stop: "d", Night: true})
		}},
		{"driving on a day of rest", planner.RuleRest, "b", "", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Drive.RestDays = []int{1}
			return v
		}},
		{"keys too late", planner.RuleKeys, "", "", 7, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Drive.EndByMin = 660 // the end is at 2107, which is 667 of the second day
			return v
		}},
		{"none of a list", planner.RuleOne, "", "", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.RequireOne = [][]string{{"a", "d"}, {"d"}}
			return v
		}},
		{"one of a list without its night", planner.RuleOne, "", "", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.RequireOne = [][]string{{"d"}}
			return append(v, planner.Visit{Stop: "d"})
		}},
		{"too heavy", planner.RuleMass, "b", "", 10, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Stops[1].Serves[0].Price = 0
			p.Mass = &planner.Mass{Most: 90, Per: map[string]float64{"water": 1, "cassette": 2}} // 100 and 0 at the departure from b
			return v
		}},
		{"too heavy to set off", planner.RuleMass, "", "", 10, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Stops[1].Serves[0].Price = 0
			p.Mass = &planner.Mass{Most: 50, Per: map[string]float64{"water": 1}}
			return v
		}},
		{"let out for nothing", planner.RuleDrain, "a", "water", 5, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Stops[1].Serves[0].Price = 0
			p.Mass = &planner.Mass{Most: 500, Per: map[string]float64{"water": 1}}
			v[0].Drain = 5
			return v
		}},
		{"let out of nothing", planner.RuleDrain, "a", "", 5, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			v[0].Drain = 5
			return v
		}},
		{"a night for three tanks and more", planner.RuleNight, "b", "water", 0, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Stops[1].Night.Use["water"] = 271 // 90 above the reserve, three times
			v[1].Serve[0].Amount = 311
			return v
		}},
		{"too little at the end", planner.RuleEnd, "", "fuel", 3.6, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Tanks[0].End.RefillPrice = nil
			return v
		}},
		{"too much waste at the end", planner.RuleEnd, "", "cassette", 0.01, func(p *planner.Problem, v []planner.Visit) []planner.Visit {
			p.Tanks[2].End.AtMost = plantest.Number(1)
			return v
		}},
	} {
		t.Run(tc.name, func(t *testing.T) {
			p, visits := plantest.Ruled()
			good, err := replay.Plan(p, visits)
			if err != nil {
				t.Fatal(err)
			}
			visits = tc.do(p, visits)
			if err := p.Validate(); err != nil {
				t.Fatal(err)
			}
			_, err = replay.Plan(p, visits)
			for who, err := range map[string]error{"replay": err, "audit": audited(p, good, visits)} {
				var b *planner.Broken
				if !errors.As(err, &b) {
					t.Fatalf("%s: %v, want a broken rule", who, err)
				}
				if b.Rule != tc.rule || b.Stop != tc.stop || b.Tank != tc.tank {
					t.Errorf("%s: %v, want rule %s, stop %q, tank %q", who, b, tc.rule, tc.stop, tc.tank)
				}
				if tc.short != 0 && !plantest.Near(math.Abs(b.Have-b.Need), tc.short) {
					t.Errorf("%s: off by %v, want %v", who, math.Abs(b.Have-b.Need), tc.short)
				}
				if text := b.Error(); !strings.Contains(text, string(tc.rule)) || !strings.Contains(text, tc.tank) || !strings.Contains(text, tc.stop) {
					t.Errorf("%s says %q", who, text)
				}
			}
		})
	}
}

// audited audits the visits in a plan that states all that follows from
// them as the auditor wants it, so that only the broken rule is in the way.
func audited(p *planner.Problem, good planner.Plan, visits []planner.Visit) error {
	plan := good
	plan.Visits = visits
	plan.End = &planner.PlanEnd{Levels: map[string]float64{}, Refill: map[string]float64{}}
	plan.Parts = &planner.CostParts{}
	for i := range visits {
		visits[i].Arrive.Levels, visits[i].Leave.Levels = map[string]float64{}, map[string]float64{}
		for _, t := range p.Tanks {
			visits[i].Arrive.Levels[t.ID], visits[i].Leave.Levels[t.ID], plan.End.Levels[t.ID] = -1, -1, -1
		}
	}
	for {
		err := audit.Check(p, plan)
		var b *planner.Broken
		if !errors.As(err, &b) || b.Field == "" && (b.Rule != planner.RuleActs || !act(p, &plan, b)) {
			return err
		}
		state(&plan, b)
	}
}

// act states when the tank is served that the auditor found wrong: once before
// leaving, then on arrival too; false if neither was right.
func act(p *planner.Problem, plan *planner.Plan, b *planner.Broken) bool {
	for i := range plan.Visits {
		v := &plan.Visits[i]
		for k := range v.Serve {
			y := &v.Serve[k]
			if v.Stop != b.Stop || y.Tank != b.Tank || !v.Night || len(y.Acts) > 1 {
				continue
			}
			nights, use := p.Stop(v.Stop).Night.Nights, p.Stop(v.Stop).Night.Use[b.Tank]
			t := p.Tanks[plantest.BruteTank(p, b.Tank)]
			if y.Acts == nil {
				y.Acts = []planner.Act{{Night: nights, Amount: y.Amount, From: v.Arrive.Levels[b.Tank] - use}}
				if t.Kind == planner.Waste {
					y.Acts[0].From = v.Arrive.Levels[b.Tank] + use
				}
				return true
			}
			first := v.Arrive.Levels[b.Tank]
			second := planner.Act{Night: nights, Amount: use, From: use}
			if t.Kind == planner.Supply {
				first = min(t.Capacity-first, y.Amount)
				second = planner.Act{Night: nights, Amount: y.Amount - first, From: v.Arrive.Levels[b.Tank] + first - use}
			}
			y.Acts = []planner.Act{{Amount: first, From: v.Arrive.Levels[b.Tank]}, second}
			return true
		}
	}
	return false
}

// state corrects the number that the auditor found wrong.
func state(plan *planner.Plan, b *planner.Broken) {
	for i := range plan.Visits {
		if v := &plan.Visits[i]; v.Stop == b.Stop {
			switch b.Field {
			case "arrive.km":
				v.Arrive.Km = b.Need
			case "arrive.min":
				v.Arrive.Min = b.Need
			case "arrive.levels":
				v.Arrive.Levels[b.Tank] = b.Need
			case "in_hand":
				v.InHand = b.Need
			case "leave.km":
				v.Leave.Km = b.Need
			case "leave.min":
				v.Leave.Min = b.Need
			case "leave.levels":
				v.Leave.Levels[b.Tank] = b.Need
			}
		}
	}
	switch b.Field {
	case "end.min":
		plan.End.Min = b.Need
	case "end.levels":
		plan.End.Levels[b.Tank] = b.Need
	case "end.refill":
		plan.End.Refill[b.Tank] = b.Need
	case "cost":
		plan.Cost = b.Need
	case "cost_parts.goods":
		plan.Parts.Goods = b.Need
	case "cost_parts.fees":
		plan.Parts.Fees = b.Need
	case "cost_parts.nights":
		plan.Parts.Nights = b.Need
	case "cost_parts.time":
		plan.Parts.Time = b.Need
	case "cost_parts.refill":
		plan.Parts.Refill = b.Need
	}
}

// TestAuditStatedNumbers changes one number of a good plan at a time.
func TestAuditStatedNumbers(t *testing.T) {
	for _, tc := range []struct {
		name, field string
		rule        planner.Rule
		do          func(*planner.Plan)
	}{
		{"format", "", planner.RuleFormat, func(x *planner.Plan) { x.Format = "" }},
		{"cost is no number", "", planner.RuleFormat, func(x *planner.Plan) { x.Cost = math.NaN() }},
		{"bound is no number", "", planner.RuleFormat, func(x *planner.Plan) { x.Bound = math.Inf(-1) }},
		{"no status", "", planner.RuleStatus, func(x *planner.Plan) { x.Status = "" }},
		{"no end", "", planner.RuleStatus, func(x *planner.Plan) { x.End = nil }},
		{"no parts", "", planner.RuleStatus, func(x *planner.Plan) { x.Parts = nil }},
		{"optimal without a bound", "", planner.RuleStatus, func(x *planner.Plan) { x.Status, x.Bound = planner.Optimal, 134 }},
		{"infeasible with a plan", "", planner.RuleStatus, func(x *planner.Plan) { x.Status = planner.Infeasible }},
		{"infeasible without a reason", "", planner.RuleStatus, func(x *planner.Plan) { *x = planner.Plan{Format: planner.PlanFormat, Status: planner.Infeasible} }},
		{"unknown with a plan", "", planner.RuleStatus, func(x *planner.Plan) { x.Status = planner.Unknown }},
		{"bound above cost", "", planner.RuleBound, func(x *planner.Plan) { x.Bound = 134.81 }},
		{"arrival km", "arrive.km", planner.RuleMoment, func(x *planner.Plan) { x.Visits[1].Arrive.Km++ }},
		{"arrival minute", "arrive.min", planner.RuleMoment, func(x *planner.Plan) { x.Visits[1].Arrive.Min-- }},
		{"arrival level", "arrive.levels", planner.RuleMoment, func(x *planner.Plan) { x.Visits[1].Arrive.Levels["fuel"] += 0.001 }},
		{"arrival level missing", "arrive.levels", planner.RuleMoment, func(x *planner.Plan) { delete(x.Visits[1].Arrive.Levels, "fuel") }},
		{"arrival level of no tank", "arrive.levels", planner.RuleMoment, func(x *planner.Plan) { x.Visits[1].Arrive.Levels["gas"] = 1 }},
		{"time in hand", "in_hand", planner.RuleMoment, func(x *planner.Plan) { x.Visits[1].InHand = 5 }},
		{"a stay without acts", "", planner.RuleActs, func(x *planner.Plan) { x.Visits[1].Serve[0].Acts = nil }},
		{"an act too late", "", planner.RuleActs, func(x *planner.Plan) {
			x.Visits[1].Serve[1].Acts = []planner.Act{{Night: 1, Amount: 19.05, From: 19.05}}
		}},
		{"an act of more than there is", "", planner.RuleActs, func(x *planner.Plan) {
			x.Visits[1].Serve[1].Acts[0].Amount, x.Visits[1].Serve[1].Acts[1].Amount = 20.05, -1
		}},
		{"an act when the tank is over its reserve", "", planner.RuleActs, func(x *planner.Plan) { x.Visits[1].Serve[1].Acts = []planner.Act{{Amount: 19.05, From: 19.05}} }},
		{"an act from another level", "", planner.RuleActs, func(x *planner.Plan) { x.Visits[1].Serve[1].Acts[1].From = 9 }},
		{"an act of nothing", "", planner.RuleActs, func(x *planner.Plan) {
			x.Visits[1].Serve[0].Acts = append(x.Visits[1].Serve[0].Acts, planner.Act{Night: 1})
		}},
		{"an act after the stay", "", planner.RuleActs, func(x *planner.Plan) { x.Visits[1].Serve[0].Acts[0].Night = 2 }},
		{"acts that are not the amount", "", planner.RuleActs, func(x *planner.Plan) { x.Visits[1].Serve[0].Acts[0].Amount-- }},
		{"acts by day", "", planner.RuleActs, func(x *planner.Plan) { x.Visits[0].Serve[0].Acts = []planner.Act{{Amount: 10}} }},
		{"leaving km", "leave.km", planner.RuleMoment, func(x *planner.Plan) { x.Visits[0].Leave.Km++ }},
		{"leaving minute", "leave.min", planner.RuleMoment, func(x *planner.Plan) { x.Visits[0].Leave.Min = math.NaN() }},
		{"leaving level", "leave.levels", planner.RuleMoment, func(x *planner.Plan) { x.Visits[0].Leave.Levels["battery"] = 91 }},
		{"end minute", "end.min", planner.RuleMoment, func(x *planner.Plan) { x.End.Min = 0 }},
		{"end level", "end.levels", planner.RuleMoment, func(x *planner.Plan) { x.End.Levels["cassette"] = 0 }},
		{"refill", "end.refill", planner.RuleMoment, func(x *planner.Plan) { x.End.Refill["fuel"] = 0 }},
		{"refill of a full tank", "end.refill", planner.RuleMoment, func(x *planner.Plan) { x.End.Refill["water"] = 1 }},
		{"refill of no tank", "end.refill", planner.RuleMoment, func(x *planner.Plan) { x.End.Refill["gas"] = 1 }},
		{"services out of order", "", planner.RuleService, func(x *planner.Plan) { s := x.Visits[1].Serve; s[0], s[1] = s[1], s[0] }},
		{"cost", "cost", planner.RuleCost, func(x *planner.Plan) { x.Cost += 0.01 }},
		{"goods", "cost_parts.goods", planner.RuleCost, func(x *planner.Plan) { x.Parts.Goods++; x.Parts.Fees-- }},
		{"fees", "cost_parts.fees", planner.RuleCost, func(x *planner.Plan) { x.Parts.Fees++ }},
		{"nights", "cost_parts.nights", planner.RuleCost, func(x *planner.Plan) { x.Parts.Nights++ }},
		{"time", "cost_parts.time", planner.RuleCost, func(x *planner.Plan) { x.Parts.Time++ }},
		{"refill cost", "cost_parts.refill", planner.RuleCost, func(x *planner.Plan) { x.Parts.Refill++ }},
	} {
		t.Run(tc.name, func(t *testing.T) {
			p, visits := plantest.Ruled()
			plan, err := replay.Plan(p, visits)
			if err != nil {
				t.Fatal(err)
			}
			tc.do(&plan)
			var b *planner.Broken
			if err := audit.Check(p, plan); !errors.As(err, &b) || b.Rule != tc.rule || b.Field != tc.field {
				t.Errorf("%v, want rule %s, field %q", err, tc.rule, tc.field)
			} else if strings.HasPrefix(b.Field, "end.") && b.Km != p.LengthKm {
				t.Errorf("%v: the end is at km %v", b, p.LengthKm)
			}
		})
	}
}

// TestAuditTolerance: what a file with six decimals states passes.
func TestAuditTolerance(t *testing.T) {
	p, visits := plantest.Ruled()
	plan, err := replay.Plan(p, visits)
	if err != nil {
		t.Fatal(err)
	}
	plan.Cost += 4e-7
	plan.Visits[0].Arrive.Levels["fuel"] -= 4e-7
	plan.Status, plan.Bound = planner.Optimal, plan.Cost-1e-5
	if err := audit.Check(p, plan); err != nil {
		t.Error(err)
	}
}

// TestSpareIsForBackup: what would be needed if a place were closed is asked for only
// of a trip that wants to survive that.
func TestSpareIsForBackup(t *testing.T) {
	for _, backup := range []bool{false, true} {
		p, visits := plantest.Ruled()
		p.Backup = backup
		for i := range p.Stops {
			for j := range p.Stops[i].Serves {
				p.Stops[i].Serves[j].Spare = 1e6
			}
		}
		plan, err := replay.Plan(p, visits)
		if err == nil {
			err = audit.Check(p, plan)
		}
		var b *planner.Broken
		if broken := errors.As(err, &b) && b.Rule == planner.RuleSpare; broken != backup || !backup && err != nil {
			t.Errorf("backup %v: %v", backup, err)
		}
	}
}

func TestAuditNoPlan(t *testing.T) {
	p, _ := plantest.Ruled()
	for _, plan := range []planner.Plan{
		{Format: planner.PlanFormat, Status: planner.Infeasible, Why: []planner.Reason{{Limit: "fuel"}}},
		{Format: planner.PlanFormat, Status: planner.Unknown},
	} {
		if err := audit.Check(p, plan); err != nil {
			t.Error(err)
		}
	}
	for name, plan := range map[string]planner.Plan{
		"visits": {Visits: []planner.Visit{{Stop: "fuel"}}}, "an end": {End: &planner.PlanEnd{}}, "parts": {Parts: &planner.CostParts{}}, "a cost": {Cost: 1},
	} {
		plan.Format, plan.Status = planner.PlanFormat, planner.Unknown
		var b *planner.Broken
		if err := audit.Check(p, plan); !errors.As(err, &b) || b.Detail != planner.NotEmpty {
			t.Errorf("no plan with %s: %v", name, err)
		}
	}
	p.Tanks[0].Capacity = -1
	if err := audit.Check(p, planner.Plan{Format: planner.PlanFormat, Status: planner.Unknown}); err == nil {
		t.Error("a plan for no valid problem passed")
	}
}

func BenchmarkAudit(b *testing.B) {
	for _, km := range []float64{300, 1000} {
		b.Run(fmt.Sprintf("%vkm", km), func(b *testing.B) {
			p := plantest.Made{LengthKm: km, Seed: 1}.Problem()
			plan := solved.Plan(b, p)
			b.ReportAllocs()
			for b.Loop() {
				if err := audit.Check(p, plan); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
