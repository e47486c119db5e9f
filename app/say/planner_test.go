package say

import (
	"go/ast"
	"go/parser"
	"go/token"
	"strconv"
	"strings"
	"testing"

	"ullage/planner"
)

// TestBrokenRules: every rule that a plan can break has a sentence, alone or with
// each of its details.
func TestBrokenRules(t *testing.T) {
	f, err := parser.ParseFile(token.NewFileSet(), "../../planner/broken.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	rules := 0
	ast.Inspect(f, func(n ast.Node) bool {
		spec, ok := n.(*ast.ValueSpec)
		if !ok {
			return true
		}
		if typ, ok := spec.Type.(*ast.Ident); !ok || typ.Name != "Rule" {
			return true
		}
		rule, _ := strconv.Unquote(spec.Values[0].(*ast.BasicLit).Value)
		rules++
		kind := "broken." + rule
		for key := range languages["en"].catalog() {
			if key == kind || strings.HasPrefix(key, kind+".") {
				return true
			}
		}
		t.Errorf("no sentence %q", kind)
		return true
	})
	if rules < 18 {
		t.Errorf("%d rules, want 18 at least", rules)
	}
}

// TestBrokenSaid: a broken rule is said with the names and the units of the problem.
func TestBrokenSaid(t *testing.T) {
	p := &planner.Problem{Tanks: []planner.Tank{{ID: "diesel", Kind: planner.Supply, Unit: "L"}, {ID: "x", Name: "Ballast", Kind: planner.Waste, Unit: "kg"}}}
	for _, tc := range []struct {
		broken planner.Broken
		want   string
	}{
		{planner.Broken{Rule: planner.RuleCapacity, Stop: "pump", Tank: "diesel", Km: 150, Have: 67, Need: 60},
			"capacity: the tank for diesel would hold 67 L at stop pump, 7 L more than the 60 L that it can"},
		{planner.Broken{Rule: planner.RuleDayKm, Km: 20.5, Have: 105.2501, Need: 105},
			"day_km: 105.2501 km in one day at km 20.5, 0.2501 km over the limit of 105 km"},
		{planner.Broken{Rule: planner.RuleMoment, Field: "leave.min", Stop: "a", Km: 3, Have: 1, Need: 2.5}, "moment: leave.min says 1 min at km 3.0, and should say 2.5 min"},
		{planner.Broken{Rule: planner.RuleMoment, Field: "leave.levels", Tank: "x", Have: 1, Need: 1.00002}, "moment: leave.levels of Ballast says 1 kg at km 0.0, and should say 1 kg"},
		{planner.Broken{Rule: planner.RuleCost, Field: "cost", Have: 134.81, Need: 134.8}, "cost: cost says 134.81, and should say 134.8"},
		{planner.Broken{Rule: planner.RuleNight, Detail: planner.NightNotThere, Stop: "a"}, "night: stop a offers none"},
	} {
		if got := (Voice{}).Fact(tc.broken.Fact(p)); got != tc.want {
			t.Errorf("%q, want %q", got, tc.want)
		}
	}
}

// TestReasonsSaid: the same of reasons, and of what would help.
func TestReasonsSaid(t *testing.T) {
	p := &planner.Problem{LengthKm: 300, Drive: planner.Drive{MaxKmPerDay: 210, MaxMinPerDay: 400},
		Tanks: []planner.Tank{{ID: "fresh", Name: "Fresh water", Kind: planner.Supply, Unit: "L"}, {ID: "cassette", Kind: planner.Waste, Unit: "L"}}}
	for _, tc := range []struct {
		reason planner.Reason
		want   string
	}{
		{planner.Reason{Kind: planner.ReasonTank, Limit: "fresh", ToKm: 150, Missing: 0.04}, "Fresh water runs out between km 0 and 150: you need 0.04 L more before a place that sells it or fills it up."},
		{planner.Reason{Kind: planner.ReasonTank, Limit: "cassette", FromKm: 20, ToKm: 150, Missing: 2.84}, "Toilet cassette is full between km 20 and 150: it would have to take 2.8 L more than it can before a place that empties it."},
		{planner.Reason{Kind: planner.ReasonDayKm, Limit: "km", FromKm: 20, ToKm: 260, Missing: 30}, "No place for the night is near enough between km 20 and 260: a day of 210 km is 30 km too short."},
		{planner.Reason{Kind: planner.ReasonDayMin, Limit: "min", Missing: 75}, "No place for the night is near enough between km 0 and 0: a day of 6 h 40 min on the road is 1 h 15 min too short."},
		{planner.Reason{Kind: planner.ReasonNightsMore, Limit: "nights", Missing: 1}, "The trip needs one more night than you allow."},
		{planner.Reason{Kind: planner.ReasonStop, Limit: "quay"}, "quay does not fit into the trip, but you must stop there."},
	} {
		if got := (Voice{}).Fact(tc.reason.Fact(p)); got != tc.want {
			t.Errorf("%q, want %q", got, tc.want)
		}
	}
	for _, tc := range []struct {
		change planner.Change
		want   string
	}{
		{planner.Change{Kind: planner.ChangeStartMore, Tank: "fresh", By: 8, Cost: 12.5, Proven: true}, "Start with 8.0 L more of fresh water: the trip then costs 12.50 EUR."},
		{planner.Change{Kind: planner.ChangeUseLess, Tank: "cassette", By: 0.32, Cost: 12.5}, "Use 32 % less of toilet cassette: the trip then costs 12.50 EUR at most."},
		{planner.Change{Kind: planner.ChangeNightsMore, Tank: "fresh", By: 2, Proven: true}, "Stay 2 more nights, where you can see to fresh water: the trip then costs 0.00 EUR."},
		{planner.Change{Kind: planner.ChangeDayMin, By: 75, Proven: true}, "Stay on the road up to 1 h 15 min longer in a day: the trip then costs 0.00 EUR."},
	} {
		if got := (Voice{}).Fact(tc.change.Fact(p, "EUR")); got != tc.want {
			t.Errorf("%q, want %q", got, tc.want)
		}
	}
}
