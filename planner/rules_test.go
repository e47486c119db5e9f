package planner_test

import (
	"encoding/json"
	"errors"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	. "ullage/planner"
)

// ruled is a problem with a plan that keeps every rule, some of them barely:
// two days of 100 km, a night at km 100 where water is filled and the cassette
// emptied, fuel before and after it.
func ruled() (*Problem, []Visit) {
	p := &Problem{
		Format: ProblemFormat, LengthKm: 200, TimeCostPerH: 60, Backup: true, Nights: &Range{1, 1},
		Drive: Drive{MaxKmPerDay: 110, MaxMinPerDay: 200, DepartMin: 540, Pace: []Pace{{50, 1}, {200, 1.2}}},
		Tanks: []Tank{
			{ID: "fuel", Kind: Supply, Capacity: 30, Reserve: 3, Start: 12, PerKm: 0.1, End: &End{AtLeast: number(20), RefillPrice: number(3)}},
			{ID: "water", Kind: Supply, Capacity: 100, Reserve: 10, Start: 60, End: &End{AtLeast: number(50)}},
			{ID: "cassette", Kind: Waste, Capacity: 20, Reserve: 2, Start: 10, PerKm: 0.01, End: &End{AtMost: number(5)}},
			{ID: "battery", Kind: Supply, Capacity: 90, Reserve: 30, Start: 80, PerKm: -0.2},
		},
		Stops: []Stop{
			{ID: "a", Km: 50, DetourKm: 4, DetourMin: 6, StopMin: 3, Fee: 1, Open: [][2]float64{{0, 500}, {600, 660}},
				Serves: []Service{{Tank: "fuel", Price: 2, Min: 5, Spare: 6}, {Tank: "water", Min: 9}}},
			{ID: "b", Km: 100, DetourKm: 2, DetourMin: 4, StopMin: 2, Required: true,
				Serves: []Service{{Tank: "water", Price: 0.1, Min: 10}, {Tank: "cassette", Min: 8, Fee: 2, GuestsOnly: true}},
				Night:  &Night{Fee: 20, Nights: 1, Use: map[string]float64{"water": 45, "cassette": 8, "battery": 50}}},
			{ID: "c", Km: 150, Serves: []Service{{Tank: "fuel", Price: 1.5, Min: 5}}},
			{ID: "d", Km: 150, Night: &Night{Nights: 1}},
		},
	}
	visits := []Visit{
		{Stop: "a", Serve: []Serve{{"fuel", 10}}},
		{Stop: "b", Night: true, Serve: []Serve{{"water", 85}, {"cassette", 19.05}}},
		{Stop: "c", Serve: []Serve{{"fuel", 15}}},
	}
	return p, visits
}

// TestReplayByHand: every number worked out by hand from the model's text.
func TestReplayByHand(t *testing.T) {
	p, visits := ruled()
	got, err := Replay(p, visits)
	if err != nil {
		t.Fatal(err)
	}
	want := Plan{
		Format: PlanFormat, Status: Feasible, Cost: 134.8,
		Visits: []Visit{
			{Stop: "a", Serve: visits[0].Serve, // 540 + 50 + 3 = 593, waits until 600, then 3 stop and 5 fuel; the battery is full at 90
				Arrive: Moment{50, 593, map[string]float64{"fuel": 6.8, "water": 60, "cassette": 10.52, "battery": 90}},
				Leave:  Moment{50, 608, map[string]float64{"fuel": 16.8, "water": 60, "cassette": 10.52, "battery": 90}}},
			{Stop: "b", Night: true, Serve: visits[1].Serve, // 608 + 3 + 50·1.2 + 2 = 673; leaves the next day at 540
				Arrive: Moment{100, 673, map[string]float64{"fuel": 11.5, "water": 60, "cassette": 11.05, "battery": 90}},
				Leave:  Moment{100, 1980, map[string]float64{"fuel": 11.5, "water": 100, "cassette": 0, "battery": 40}}},
			{Stop: "c", Serve: visits[2].Serve,
				Arrive: Moment{150, 2042, map[string]float64{"fuel": 6.4, "water": 100, "cassette": 0.51, "battery": 50.2}},
				Leave:  Moment{150, 2047, map[string]float64{"fuel": 21.4, "water": 100, "cassette": 0.51, "battery": 50.2}}},
		},
		End: &PlanEnd{Min: 2107, Levels: map[string]float64{"fuel": 16.4, "water": 100, "cassette": 1.01, "battery": 60.2}, Refill: map[string]float64{"fuel": 3.6}},
		// Goods 10·2 + 85·0.1 + 15·1.5; fees 1 + 2; time, 1 a minute: a 6 + 7 + 3 + 5, b 4 + 2 + 10 + 8, c 5; refill 3.6·3.
		Parts: &CostParts{Goods: 51, Fees: 3, Nights: 20, Time: 50, Refill: 10.8},
	}
	if g, w := rounded(t, got), rounded(t, want); g != w {
		t.Errorf("replay gives\n%s\nwant\n%s", g, w)
	}
	if err := Audit(p, got); err != nil {
		t.Error(err)
	}
}

// rounded is a plan as JSON with six decimals.
func rounded(t *testing.T, plan Plan) string {
	t.Helper()
	b, err := json.Marshal(plan)
	if err != nil {
		t.Fatal(err)
	}
	return regexp.MustCompile(`-?[0-9]+\.[0-9]+(e-?[0-9]+)?`).ReplaceAllStringFunc(string(b), func(x string) string {
		v, _ := strconv.ParseFloat(x, 64)
		return strconv.FormatFloat(round(v, 6), 'f', -1, 64)
	})
}

// TestEveryRule breaks one rule at a time, and wants both Replay and Audit to
// name it.
func TestEveryRule(t *testing.T) {
	for _, tc := range []struct {
		name  string
		rule  Rule
		stop  string
		tank  string
		short float64 // by how much, 0 where no number is meant
		do    func(p *Problem, v []Visit) []Visit
	}{
		{"unknown stop", RuleOrder, "x", "", 0, func(p *Problem, v []Visit) []Visit { v[0].Stop = "x"; return v }},
		{"stop twice", RuleOrder, "c", "", 0, func(p *Problem, v []Visit) []Visit { return append(v, v[2]) }},
		{"backwards", RuleOrder, "a", "", 0, func(p *Problem, v []Visit) []Visit {
			v[1].Serve[1].Amount = 19.01
			p.Tanks[0].Start = 30
			v[0].Serve = nil
			v[0], v[1] = v[1], v[0]
			return v
		}},
		{"equal km, not the list's order", RuleOrder, "c", "", 0, func(p *Problem, v []Visit) []Visit { return []Visit{v[0], v[1], {Stop: "d"}, v[2]} }},
		{"required stop left out", RuleRequired, "c", "", 0, func(p *Problem, v []Visit) []Visit { p.Stops[2].Required = true; p.Tanks[0].Start = 22; return v[:2] }},
		{"required night not taken", RuleRequired, "d", "", 0, func(p *Problem, v []Visit) []Visit { p.Stops[3].Required = true; return append(v, Visit{Stop: "d"}) }},
		{"no night here", RuleNight, "c", "", 0, func(p *Problem, v []Visit) []Visit { v[2].Night = true; return v }},
		{"night after its own morning", RuleNight, "b", "", 0, func(p *Problem, v []Visit) []Visit {
			p.Drive.MaxMinPerDay = 5000
			p.Stops[0].Open = [][2]float64{{1980, 1980}} // 1980 + 8 + 3 + 60 + 4 is more than 1440 after 540
			return v
		}},
		{"not served here", RuleService, "c", "water", 0, func(p *Problem, v []Visit) []Visit { v[2].Serve = []Serve{{"water", 1}}; return v }},
		{"served twice", RuleService, "c", "fuel", 0, func(p *Problem, v []Visit) []Visit { v[2].Serve = []Serve{{"fuel", 10}, {"fuel", 5}}; return v }},
		{"guests only", RuleService, "b", "cassette", 0, func(p *Problem, v []Visit) []Visit { p.Stops[1].Required = false; v[1].Night = false; return v }},
		{"no amount", RuleAmount, "c", "fuel", 0, func(p *Problem, v []Visit) []Visit { v[2].Serve[0].Amount = 0; return v }},
		{"amount below nothing", RuleAmount, "c", "fuel", 0, func(p *Problem, v []Visit) []Visit { v[2].Serve[0].Amount = -1; return v }},
		{"amount not a number", RuleAmount, "c", "fuel", 0, func(p *Problem, v []Visit) []Visit { v[2].Serve[0].Amount = math.NaN(); return v }},
		{"waste not all", RuleAmount, "b", "cassette", 0.05, func(p *Problem, v []Visit) []Visit { v[1].Serve[1].Amount = 19; return v }},
		{"too full", RuleCapacity, "a", "fuel", 0.3, func(p *Problem, v []Visit) []Visit { v[0].Serve[0].Amount = 23.5; return v }},
		{"too full after the night", RuleCapacity, "b", "water", 0.01, func(p *Problem, v []Visit) []Visit { v[1].Serve[0].Amount = 85.01; return v }},
		{"dry on the way", RuleReserve, "c", "fuel", 0.6, func(p *Problem, v []Visit) []Visit { v[0].Serve[0].Amount = 6; return v }},
		{"waste over the reserve", RuleReserve, "a", "cassette", 0.52, func(p *Problem, v []Visit) []Visit { p.Tanks[2].Start = 18; return v }},
		{"dry by night", RuleReserve, "b", "battery", 0.5, func(p *Problem, v []Visit) []Visit { p.Stops[1].Night.Use["battery"] = 60.5; return v }},
		{"dry by night although filled", RuleReserve, "b", "water", 1, func(p *Problem, v []Visit) []Visit { p.Tanks[1].Reserve = 26; v[1].Serve[0].Amount = 10; return v }},
		{"dry at the end", RuleReserve, "", "fuel", 1.6, func(p *Problem, v []Visit) []Visit { v[2].Serve = nil; return v }},
		{"no way to the next place", RuleSpare, "a", "fuel", 0.2, func(p *Problem, v []Visit) []Visit { p.Stops[0].Serves[0].Spare = 7; return v }},
		{"far by night", RuleDayKm, "b", "", 1, func(p *Problem, v []Visit) []Visit { p.Drive.MaxKmPerDay = 104; return v }},
		{"far at the end", RuleDayKm, "", "", 1, func(p *Problem, v []Visit) []Visit {
			p.Stops[1].DetourKm = 12
			p.Stops[0].DetourKm = 0
			p.Drive.MaxKmPerDay = 106
			v[1].Serve[1].Amount = 19.06
			p.LengthKm = 201
			p.Drive.Pace[1].ToKm = 201
			return v
		}},
		{"long by night", RuleDayMin, "b", "", 5, func(p *Problem, v []Visit) []Visit { p.Drive.MaxMinPerDay = 130; return v }},
		{"long at the end", RuleDayMin, "", "", 75, func(p *Problem, v []Visit) []Visit {
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
		{"closed", RuleOpen, "a", "", 3, func(p *Problem, v []Visit) []Visit { p.Stops[0].Open = [][2]float64{{0, 500}, {550, 590}}; return v }},
		{"too few nights", RuleNights, "", "", 1, func(p *Problem, v []Visit) []Visit { p.Nights = &Range{2, 3}; return v }},
		{"too many nights", RuleNights, "", "", 1, func(p *Problem, v []Visit) []Visit { p.Nights = &Range{0, 0}; return v }},
		{"too little at the end", RuleEnd, "", "fuel", 3.6, func(p *Problem, v []Visit) []Visit { p.Tanks[0].End.RefillPrice = nil; return v }},
		{"too much waste at the end", RuleEnd, "", "cassette", 0.01, func(p *Problem, v []Visit) []Visit { p.Tanks[2].End.AtMost = number(1); return v }},
	} {
		t.Run(tc.name, func(t *testing.T) {
			p, visits := ruled()
			good, err := Replay(p, visits)
			if err != nil {
				t.Fatal(err)
			}
			visits = tc.do(p, visits)
			if err := p.Validate(); err != nil {
				t.Fatal(err)
			}
			_, err = Replay(p, visits)
			for who, err := range map[string]error{"replay": err, "audit": auditVisits(p, good, visits)} {
				var b *Broken
				if !errors.As(err, &b) {
					t.Fatalf("%s: %v, want a broken rule", who, err)
				}
				if b.Rule != tc.rule || b.Stop != tc.stop || b.Tank != tc.tank {
					t.Errorf("%s: %v, want rule %s, stop %q, tank %q", who, b, tc.rule, tc.stop, tc.tank)
				}
				if tc.short != 0 && !near(math.Abs(b.Have-b.Need), tc.short) {
					t.Errorf("%s: off by %v, want %v", who, math.Abs(b.Have-b.Need), tc.short)
				}
				if text := b.Error(); !strings.Contains(text, string(tc.rule)) || !strings.Contains(text, tc.tank) || !strings.Contains(text, tc.stop) {
					t.Errorf("%s says %q", who, text)
				}
			}
		})
	}
}

// auditVisits audits the visits in a plan that states all that follows from
// them as the auditor wants it, so that only the broken rule is in the way.
func auditVisits(p *Problem, good Plan, visits []Visit) error {
	plan := good
	plan.Visits = visits
	plan.End = &PlanEnd{Levels: map[string]float64{}, Refill: map[string]float64{}}
	plan.Parts = &CostParts{}
	for i := range visits {
		visits[i].Arrive.Levels, visits[i].Leave.Levels = map[string]float64{}, map[string]float64{}
		for _, t := range p.Tanks {
			visits[i].Arrive.Levels[t.ID], visits[i].Leave.Levels[t.ID], plan.End.Levels[t.ID] = -1, -1, -1
		}
	}
	for {
		err := Audit(p, plan)
		var b *Broken
		if !errors.As(err, &b) || b.Field == "" {
			return err
		}
		state(&plan, b)
	}
}

// state corrects the number that the auditor found wrong.
func state(plan *Plan, b *Broken) {
	for i := range plan.Visits {
		if v := &plan.Visits[i]; v.Stop == b.Stop {
			switch b.Field {
			case "arrive.km":
				v.Arrive.Km = b.Need
			case "arrive.min":
				v.Arrive.Min = b.Need
			case "arrive.levels":
				v.Arrive.Levels[b.Tank] = b.Need
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
		rule        Rule
		do          func(*Plan)
	}{
		{"format", "", RuleFormat, func(x *Plan) { x.Format = "" }},
		{"cost is no number", "", RuleFormat, func(x *Plan) { x.Cost = math.NaN() }},
		{"bound is no number", "", RuleFormat, func(x *Plan) { x.Bound = math.Inf(-1) }},
		{"no status", "", RuleStatus, func(x *Plan) { x.Status = "" }},
		{"no end", "", RuleStatus, func(x *Plan) { x.End = nil }},
		{"no parts", "", RuleStatus, func(x *Plan) { x.Parts = nil }},
		{"optimal without a bound", "", RuleStatus, func(x *Plan) { x.Status, x.Bound = Optimal, 134 }},
		{"infeasible with a plan", "", RuleStatus, func(x *Plan) { x.Status = Infeasible }},
		{"infeasible without a reason", "", RuleStatus, func(x *Plan) { *x = Plan{Format: PlanFormat, Status: Infeasible} }},
		{"unknown with a plan", "", RuleStatus, func(x *Plan) { x.Status = Unknown }},
		{"bound above cost", "", RuleBound, func(x *Plan) { x.Bound = 134.81 }},
		{"arrival km", "arrive.km", RuleMoment, func(x *Plan) { x.Visits[1].Arrive.Km++ }},
		{"arrival minute", "arrive.min", RuleMoment, func(x *Plan) { x.Visits[1].Arrive.Min-- }},
		{"arrival level", "arrive.levels", RuleMoment, func(x *Plan) { x.Visits[1].Arrive.Levels["fuel"] += 0.001 }},
		{"arrival level missing", "arrive.levels", RuleMoment, func(x *Plan) { delete(x.Visits[1].Arrive.Levels, "fuel") }},
		{"arrival level of no tank", "arrive.levels", RuleMoment, func(x *Plan) { x.Visits[1].Arrive.Levels["gas"] = 1 }},
		{"leaving km", "leave.km", RuleMoment, func(x *Plan) { x.Visits[0].Leave.Km++ }},
		{"leaving minute", "leave.min", RuleMoment, func(x *Plan) { x.Visits[0].Leave.Min = math.NaN() }},
		{"leaving level", "leave.levels", RuleMoment, func(x *Plan) { x.Visits[0].Leave.Levels["battery"] = 91 }},
		{"end minute", "end.min", RuleMoment, func(x *Plan) { x.End.Min = 0 }},
		{"end level", "end.levels", RuleMoment, func(x *Plan) { x.End.Levels["cassette"] = 0 }},
		{"refill", "end.refill", RuleMoment, func(x *Plan) { x.End.Refill["fuel"] = 0 }},
		{"refill of a full tank", "end.refill", RuleMoment, func(x *Plan) { x.End.Refill["water"] = 1 }},
		{"refill of no tank", "end.refill", RuleMoment, func(x *Plan) { x.End.Refill["gas"] = 1 }},
		{"services out of order", "", RuleService, func(x *Plan) { s := x.Visits[1].Serve; s[0], s[1] = s[1], s[0] }},
		{"cost", "cost", RuleCost, func(x *Plan) { x.Cost += 0.01 }},
		{"goods", "cost_parts.goods", RuleCost, func(x *Plan) { x.Parts.Goods++; x.Parts.Fees-- }},
		{"fees", "cost_parts.fees", RuleCost, func(x *Plan) { x.Parts.Fees++ }},
		{"nights", "cost_parts.nights", RuleCost, func(x *Plan) { x.Parts.Nights++ }},
		{"time", "cost_parts.time", RuleCost, func(x *Plan) { x.Parts.Time++ }},
		{"refill cost", "cost_parts.refill", RuleCost, func(x *Plan) { x.Parts.Refill++ }},
	} {
		t.Run(tc.name, func(t *testing.T) {
			p, visits := ruled()
			plan, err := Replay(p, visits)
			if err != nil {
				t.Fatal(err)
			}
			tc.do(&plan)
			var b *Broken
			if err := Audit(p, plan); !errors.As(err, &b) || b.Rule != tc.rule || b.Field != tc.field {
				t.Errorf("%v, want rule %s, field %q", err, tc.rule, tc.field)
			}
		})
	}
}

// TestAuditTolerance: what a file with six decimals states passes.
func TestAuditTolerance(t *testing.T) {
	p, visits := ruled()
	plan, err := Replay(p, visits)
	if err != nil {
		t.Fatal(err)
	}
	plan.Cost += 4e-7
	plan.Visits[0].Arrive.Levels["fuel"] -= 4e-7
	plan.Status, plan.Bound = Optimal, plan.Cost-1e-5
	if err := Audit(p, plan); err != nil {
		t.Error(err)
	}
}

func TestAuditNoPlan(t *testing.T) {
	p, _ := ruled()
	for _, plan := range []Plan{
		{Format: PlanFormat, Status: Infeasible, Why: []Reason{{Limit: "fuel"}}},
		{Format: PlanFormat, Status: Unknown},
	} {
		if err := Audit(p, plan); err != nil {
			t.Error(err)
		}
	}
	p.Tanks[0].Capacity = -1
	if err := Audit(p, Plan{Format: PlanFormat, Status: Unknown}); err == nil {
		t.Error("a plan for no valid problem passed")
	}
}
