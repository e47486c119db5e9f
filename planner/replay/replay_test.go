package replay_test

import (
	"encoding/json"
	"fmt"
	"regexp"
	"strconv"
	"testing"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
	"ullage/planner/replay"
)

// TestReplayByHand: every number worked out by hand from the model's text.
func TestReplayByHand(t *testing.T) {
	p, visits := plantest.Ruled()
	got, err := replay.Plan(p, visits)
	if err != nil {
		t.Fatal(err)
	}
	want := planner.Plan{
		Format: planner.PlanFormat, Status: planner.Feasible, Cost: 134.8,
		Visits: []planner.Visit{
			{Stop: "a", Serve: visits[0].Serve, // 540 + 50 + 3 = 593, waits until 600, then 3 stop and 5 fuel; the battery is full at 90
				Arrive: planner.Moment{Km: 50, Min: 593, Levels: map[string]float64{"fuel": 6.8, "water": 60, "cassette": 10.52, "battery": 90}},
				Leave:  planner.Moment{Km: 50, Min: 608, Levels: map[string]float64{"fuel": 16.8, "water": 60, "cassette": 10.52, "battery": 90}}},
			{Stop: "b", Night: true, Serve: []planner.Serve{
				{Tank: "water", Amount: 85, Acts: []planner.Act{{Night: 1, Amount: 85, From: 15}}},
				// 11.05 and 8 for the night are more than the cassette takes, so it is emptied on arrival too.
				{Tank: "cassette", Amount: 19.05, Acts: []planner.Act{{Night: 0, Amount: 11.05, From: 11.05}, {Night: 1, Amount: 8, From: 8}}}}, // 608 + 3 + 50·1.2 + 2 = 673; leaves the next day at 540
				Arrive: planner.Moment{Km: 100, Min: 673, Levels: map[string]float64{"fuel": 11.5, "water": 60, "cassette": 11.05, "battery": 90}},
				Leave:  planner.Moment{Km: 100, Min: 1980, Levels: map[string]float64{"fuel": 11.5, "water": 100, "cassette": 0, "battery": 40}}},
			{Stop: "c", Serve: visits[2].Serve,
				Arrive: planner.Moment{Km: 150, Min: 2042, Levels: map[string]float64{"fuel": 6.4, "water": 100, "cassette": 0.51, "battery": 50.2}},
				Leave:  planner.Moment{Km: 150, Min: 2047, Levels: map[string]float64{"fuel": 21.4, "water": 100, "cassette": 0.51, "battery": 50.2}}},
		},
		End: &planner.PlanEnd{Min: 2107, Levels: map[string]float64{"fuel": 16.4, "water": 100, "cassette": 1.01, "battery": 60.2}, Refill: map[string]float64{"fuel": 3.6}},
		// Goods 10·2 + 85·0.1 + 15·1.5; fees 1 + 2; time, 1 a minute: a 6 + 7 + 3 + 5, b 4 + 2 + 10 + 8, c 5; refill 3.6·3.
		Parts: &planner.CostParts{Goods: 51, Fees: 3, Nights: 20, Time: 50, Refill: 10.8},
	}
	if g, w := rounded(t, got), rounded(t, want); g != w {
		t.Errorf("replay gives\n%s\nwant\n%s", g, w)
	}
	if err := audit.Check(p, got); err != nil {
		t.Error(err)
	}
}

// rounded is a plan as JSON with six decimals.
func rounded(t *testing.T, plan planner.Plan) string {
	t.Helper()
	b, err := json.Marshal(plan)
	if err != nil {
		t.Fatal(err)
	}
	return regexp.MustCompile(`-?[0-9]+\.[0-9]+(e-?[0-9]+)?`).ReplaceAllStringFunc(string(b), func(x string) string {
		v, _ := strconv.ParseFloat(x, 64)
		return strconv.FormatFloat(plantest.Round(v, 6), 'f', -1, 64)
	})
}

func BenchmarkReplay(b *testing.B) {
	for _, km := range []float64{300, 1000} {
		b.Run(fmt.Sprintf("%vkm", km), func(b *testing.B) {
			p := plantest.Made{LengthKm: km, Seed: 1}.Problem()
			plan := solved.Plan(b, p)
			b.ReportAllocs()
			for b.Loop() {
				if _, err := replay.Plan(p, plan.Visits); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
