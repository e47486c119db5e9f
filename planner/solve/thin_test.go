package solve

import (
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"ullage/planner"
	"ullage/planner/internal/model"
	"ullage/planner/internal/plantest"
)

// worse is a stop beside s where nothing is better, most of the time; s is one by day.
func worse(g *rand.Rand, p *planner.Problem, s planner.Stop, id string) planner.Stop {
	w := s
	w.ID, w.Night, w.Required = id, nil, false
	w.Km = min(p.LengthKm, max(0, s.Km+[]float64{0, 0, 1, -1}[g.IntN(4)]*2*g.Float64()))
	aside := math.Abs(w.Km - s.Km)
	w.DetourKm += 2*aside + []float64{0, 1e-12, 3, -0.5}[g.IntN(4)]*aside
	w.DetourMin += 6 * aside
	w.Fee += float64(g.IntN(2))
	if g.IntN(4) == 0 {
		w.Open = nil
	}
	w.Serves = slices.Clone(s.Serves)
	w.Serves = slices.DeleteFunc(w.Serves, func(x planner.Service) bool { return x.GuestsOnly || g.IntN(6) == 0 })
	for i := range w.Serves {
		if x := &w.Serves[i]; x.Price > 0 {
			x.Price = plantest.Round(x.Price*(0.98+0.2*g.Float64()), 3)
		}
	}
	return w
}

// crowded is a tiny problem without a tank that driving restores, and with such stops.
func crowded(seed uint64) *planner.Problem {
	g := rand.New(rand.NewPCG(seed, 29))
	p := plantest.Tiny(seed)
	for i := range p.Tanks {
		p.Tanks[i].PerKm = math.Abs(p.Tanks[i].PerKm) / 4
	}
	for n := range 3 {
		i := g.IntN(len(p.Stops))
		w := worse(g, p, p.Stops[i], fmt.Sprintf("%c%d", "az"[g.IntN(2)], n))
		p.Stops = append(p.Stops, w)
	}
	plantest.SortByKm(p.Stops)
	return p
}

var thinCount = flag.Int("thin", 1500, "how many crowded random problems to thin")

// TestThin: with stops left out the answer is the same, byte for byte.
func TestThin(t *testing.T) {
	t.Parallel()
	thinned, plans := 0, 0
	for n := range uint64(*thinCount) {
		seed := n
		if n == 0 {
			seed = 17245 // a night that restores what is to be spare at the place beside it
		}
		p := crowded(seed)
		q := thin(p)
		if q == p {
			continue
		}
		thinned += len(p.Stops) - len(q.Stops)
		answer := func(p *planner.Problem, m *model.Model) string {
			s := &solver{p: p, opt: Options{MaxLabels: usualLabels}, m: m, cost: math.Inf(1)}
			plan, err := s.solve(t.Context())
			if err != nil || plan.Status == planner.Unknown || plan.Status == planner.Feasible {
				t.Fatalf("seed %d: %v, %v", seed, plan.Status, err)
			}
			if plan.End != nil {
				plans++
			}
			plan.Bound, plan.Why = 0, nil // proven by other numbers
			plan.Cost = plantest.Round(plan.Cost, 6)
			b, err := json.Marshal([]any{plan.Status, plan.Cost, stopsOf(plan)})
			if err != nil {
				t.Fatal(err)
			}
			return string(b)
		}
		if len(planner.Shortfall(p)) > 0 {
			continue
		}
		if with, without := answer(p, model.New(p)), answer(p, model.New(q)); with != without {
			t.Fatalf("seed %d: %s, without %d stops %s", seed, with, len(p.Stops)-len(q.Stops), without)
		}
	}
	if thinned < 1000 || plans < 600 {
		t.Errorf("%d stops left out, %d plans: too few to tell", thinned, plans)
	}
}

// TestThinBrute: and it is the least cost.
func TestThinBrute(t *testing.T) {
	t.Parallel()
	compared := 0
	for seed := uint64(0); compared < 15; seed++ {
		p := crowded(seed)
		q := thin(p)
		if len(p.Stops) > 6 || q == p {
			continue
		}
		compared++
		all, some := plantest.Brute(p), plantest.Brute(q)
		if all != some && !plantest.Near(all, some) {
			t.Fatalf("seed %d: %v, without %d stops %v", seed, all, len(p.Stops)-len(q.Stops), some)
		}
	}
}

func stopsOf(plan planner.Plan) []string {
	var out []string // where two differ by a night for nothing, either is the answer
	for _, v := range plan.Visits {
		out = append(out, v.Stop)
	}
	return out
}

// TestThinNeighbours: what a neighbour replaces, and what it does not.
func TestThinNeighbours(t *testing.T) {
	p := &planner.Problem{Tanks: []planner.Tank{{ID: "fuel", PerKm: 0.1}}, Drive: planner.Drive{Pace: []planner.Pace{{ToKm: 100, MinPerKm: 1}}}}
	pump := []planner.Service{{Tank: "fuel", Price: 1}}
	a := planner.Stop{ID: "a", Km: 10, DetourKm: 1, DetourMin: 1, Serves: pump}
	b := planner.Stop{ID: "b", Km: 11, DetourKm: 4, DetourMin: 4, Serves: pump}
	count := func(stops ...planner.Stop) int {
		p.Stops = stops
		return len(thin(p).Stops)
	}
	for name, c := range map[string]struct{ got, want int }{
		"farther off":       {count(a, b), 1},
		"something between": {count(a, planner.Stop{ID: "n", Km: 10.5, Night: &planner.Night{Nights: 1}}, b), 3},
		"nothing there":     {count(a, planner.Stop{ID: "n", Km: 10.5}, b), 1},
		"required":          {count(a, changed(b, func(s *planner.Stop) { s.Required = true })), 2},
		"a night":           {count(a, changed(b, func(s *planner.Stop) { s.Night = &planner.Night{Nights: 1} })), 2},
		"cheaper":           {count(a, changed(b, func(s *planner.Stop) { s.Serves = []planner.Service{{Tank: "fuel", Price: 0.9}} })), 2},
		"open longer":       {count(changed(a, func(s *planner.Stop) { s.Open = [][2]float64{{0, 9}} }), b), 2},
		"not off the way":   {count(a, changed(b, func(s *planner.Stop) { s.DetourKm = 2 })), 2},
	} {
		if c.got != c.want {
			t.Errorf("%s: %d stops kept, want %d", name, c.got, c.want)
		}
	}
	if p.Tanks[0].PerKm = -1; count(a, b) != 2 {
		t.Error("where driving restores, the longer way may be the better")
	}
}

func changed(s planner.Stop, change func(*planner.Stop)) planner.Stop {
	change(&s)
	return s
}
