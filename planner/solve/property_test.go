package solve_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"

	"ullage/data/problemfile"

	"pgregory.net/rapid"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/internal/plantest"
	"ullage/planner/internal/plantest/solved"
)

// This file holds what must be true of every problem. Each plan that solve
// returns has passed the auditor.

// drawTiny draws a tiny problem by its seed.
func drawTiny(t *rapid.T) (*planner.Problem, *rand.Rand) {
	seed := rapid.Uint64Range(1, 1<<32).Draw(t, "seed")
	return plantest.Tiny(seed), rand.New(rand.NewPCG(seed, 13))
}

// leastCost is +Inf where there is no plan.
func leastCost(t failer, p *planner.Problem) float64 {
	plan := solved.Plan(t, p)
	switch plan.Status {
	case planner.Optimal:
		return plan.Cost
	case planner.Infeasible:
		return math.Inf(1)
	}
	t.Fatal("status", plan.Status)
	return 0
}

// TestEasierIsNeverDearer changes a problem so that every old plan stays
// valid and costs no more, or every new plan was valid and cost no more.
func TestEasierIsNeverDearer(t *testing.T) {
	t.Parallel()
	for _, tc := range []struct {
		name string
		ease func(p *planner.Problem, g *rand.Rand)
	}{
		{"one more place", func(p *planner.Problem, g *rand.Rand) {
			s := plantest.TinyMaker{Rand: g}.Stop("new", p, 0.5)
			s.Required = false
			for j := range s.Serves {
				if p.Mass != nil {
					s.Serves[j].Price = 0
				}
			}
			p.Stops = append(p.Stops, s)
			plantest.SortByKm(p.Stops)
		}},
		// The start level is kept. A waste tank then starts with more headroom,
		// and its end is a level, not a headroom.
		{"a larger tank", func(p *planner.Problem, g *rand.Rand) { p.Tanks[g.IntN(len(p.Tanks))].Capacity += 20 * g.Float64() }},
		{"a smaller reserve", func(p *planner.Problem, g *rand.Rand) { p.Tanks[g.IntN(len(p.Tanks))].Reserve *= g.Float64() }},
		{"a better start", func(p *planner.Problem, g *rand.Rand) {
			t := &p.Tanks[g.IntN(len(p.Tanks))]
			if share := g.Float64(); t.Kind == planner.Supply && p.Mass != nil {
				return // it may be too heavy then
			} else if t.Kind == planner.Supply {
				t.Start += (t.Capacity - t.Start) * share
			} else {
				t.Start *= share
			}
		}},
		{"less use on the road", func(p *planner.Problem, g *rand.Rand) { p.Tanks[g.IntN(len(p.Tanks))].PerKm -= 0.02 * g.Float64() }},
		{"less use by night", func(p *planner.Problem, g *rand.Rand) {
			for _, s := range p.Stops {
				if s.Night != nil {
					id := p.Tanks[g.IntN(len(p.Tanks))].ID
					if by := s.Night.ByNight[id]; by != nil {
						r := g.Float64()
						if s.Night.Use[id] < 0 {
							r += 1
						}
						s.Night.Use[id] *= r
						less := make([]float64, len(by))
						for i := range by {
							less[i] = r * by[i]
						}
						s.Night.ByNight[id] = less
						continue
					}
					s.Night.Use[id] -= 10 * g.Float64()
				}
			}
		}},
		{"more km in a day", func(p *planner.Problem, g *rand.Rand) { p.Drive.MaxKmPerDay *= 1 + g.Float64() }},
		{"a longer day", func(p *planner.Problem, g *rand.Rand) { p.Drive.MaxMinPerDay *= 1 + g.Float64() }},
		{"no end conditions", func(p *planner.Problem, g *rand.Rand) { p.Tanks[g.IntN(len(p.Tanks))].End = nil }},
		{"any number of nights", func(p *planner.Problem, g *rand.Rand) { p.Nights = nil }},
		{"no backup", func(p *planner.Problem, g *rand.Rand) { p.Backup = false }},
		{"nothing required", func(p *planner.Problem, g *rand.Rand) {
			for i := range p.Stops {
				p.Stops[i].Required = false
			}
		}},
		{"nothing of a list", func(p *planner.Problem, g *rand.Rand) { p.RequireOne = nil }},
		{"moves of any length", func(p *planner.Problem, g *rand.Rand) { p.Drive.MoveKm *= g.Float64() }},
		{"driving on all days", func(p *planner.Problem, g *rand.Rand) { p.Drive.RestDays = nil }},
		{"keys at any time", func(p *planner.Problem, g *rand.Rand) { p.Drive.EndByMin = 0 }},
		{"a stronger axle", func(p *planner.Problem, g *rand.Rand) {
			if p.Mass != nil {
				m := *p.Mass
				m.Most *= 1 + g.Float64()
				p.Mass = &m
			}
		}},
		{"arriving at any time", func(p *planner.Problem, g *rand.Rand) {
			for _, s := range p.Stops {
				if s.Night != nil && s.Night.CheckIn != nil && (s.Night.Nights == 1 || p.Drive.MaxMinPerDay < 1440) {
					s.Night.CheckIn = nil
				}
			}
		}},
		{"always open", func(p *planner.Problem, g *rand.Rand) {
			for i := range p.Stops {
				p.Stops[i].Open = nil
			}
		}},
		{"for everybody", func(p *planner.Problem, g *rand.Rand) {
			for _, s := range p.Stops {
				for j := range s.Serves {
					s.Serves[j].GuestsOnly = false
				}
			}
		}},
		{"cheaper", func(p *planner.Problem, g *rand.Rand) {
			p.TimeCostPerH *= g.Float64()
			for i, s := range p.Stops {
				p.Stops[i].Fee *= g.Float64()
				for j := range s.Serves {
					s.Serves[j].Price *= g.Float64()
				}
			}
		}},
	} {
		t.Run(tc.name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				p, g := drawTiny(t)
				before := leastCost(t, p)
				tc.ease(p, g)
				if after := leastCost(t, p); after > before && !plantest.Near(after, before) {
					t.Errorf("cost rises from %v to %v", before, after)
				}
			})
		})
	}
}

// TestOrderOfInput: neither the order of tanks and services nor that of
// stops at one km without detour, night, windows and backup changes the cost.
func TestOrderOfInput(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, g := drawTiny(t)
		for i := range p.Stops[1:] {
			a, b := &p.Stops[i], &p.Stops[i+1]
			if g.IntN(2) == 0 {
				b.Km = a.Km
			}
		}
		plantest.SortByKm(p.Stops)
		before := leastCost(t, p)
		g.Shuffle(len(p.Tanks), func(i, j int) { p.Tanks[i], p.Tanks[j] = p.Tanks[j], p.Tanks[i] })
		for i, s := range p.Stops {
			g.Shuffle(len(s.Serves), func(i, j int) { s.Serves[i], s.Serves[j] = s.Serves[j], s.Serves[i] })
			if i > 0 && plain(s) && plain(p.Stops[i-1]) && s.Km == p.Stops[i-1].Km && !p.Backup {
				p.Stops[i], p.Stops[i-1] = p.Stops[i-1], p.Stops[i]
			}
		}
		if after := leastCost(t, p); !plantest.Near(before, after) {
			t.Errorf("cost %v becomes %v", before, after)
		}
	})
}

func plain(s planner.Stop) bool {
	return s.DetourKm == 0 && s.DetourMin == 0 && s.Night == nil && len(s.Open) == 0
}

func TestSameInputSameBytes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, _ := drawTiny(t)
		before, err := json.Marshal(p)
		if err != nil {
			t.Fatal(err)
		}
		var first string
		for i := range 2 {
			b, err := json.Marshal(solved.Plan(t, p))
			if err != nil {
				t.Fatal(err)
			}
			if i > 0 && string(b) != first {
				t.Errorf("%s, then %s", first, b)
			}
			first = string(b)
		}
		if after, _ := json.Marshal(p); string(after) != string(before) {
			t.Errorf("solving changes the problem %s into %s", before, after)
		}
	})
}

// TestDecodedIsTheSame: a plan that went through a file passes the auditor.
func TestDecodedIsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, _ := drawTiny(t)
		b, err := json.Marshal(solved.Plan(t, p))
		if err != nil {
			t.Fatal(err)
		}
		plan, err := problemfile.DecodePlan("plan", b)
		if err != nil {
			t.Fatal(err)
		}
		if err := audit.Check(p, plan); err != nil {
			t.Error(err)
		}
	})
}

func BenchmarkSolveMade(b *testing.B) {
	for _, m := range []plantest.Made{
		{LengthKm: 300, Seed: 1}, {LengthKm: 1000, Seed: 1}, {LengthKm: 1000, Seed: 1, Backup: true}, {LengthKm: 1000, Seed: 1, Open: true},
		{LengthKm: 300, Seed: 1, Battery: true}, {LengthKm: 300, Seed: 1, Battery: true, Open: true, Backup: true},
	} {
		b.Run(m.String(), func(b *testing.B) {
			p := m.Problem()
			for b.Loop() {
				if plan := solved.Plan(b, p); plan.Status != planner.Optimal {
					b.Fatalf("%s: cost %v, bound %v", plan.Status, plan.Cost, plan.Bound)
				}
			}
		})
	}
}
