package road_test

import (
	"context"
	"math/rand/v2"
	"testing"

	"ullage/data/osm/osmtest"
	"ullage/geo/road"
	"ullage/geo/road/net"
)

// Other ways keep the three properties of Abraham, Delling, Goldberg and Werneck 2013, each checked anew: they share at most
// 0.8 of the best cost with each way before, cost at most 1.3 times the best, and every piece of them up to an eighth of the
// best cost is a best way by Dijkstra.
func TestAlternatives(t *testing.T) {
	for _, tc := range []struct {
		path  string
		least float64 // share of pairs with another way
	}{{osmtest.Demo, 0.5}, {andorra, 0.3}} {
		t.Run(tc.path, func(t *testing.T) {
			n := osmtest.Network(t, tc.path)
			r, err := road.NewRouter(context.Background(), n, net.Vehicle{HeightM: 3, MassT: 3.5, MarginM: 0.1}, road.Fastest)
			if err != nil {
				t.Fatal(err)
			}
			q := r.Query()
			rng := rand.New(rand.NewPCG(9, 9))
			asked, with, others, windows := 0, 0, 0, 0
			for asked < 60 {
				from, to := road.AnySpot(n, rng), road.AnySpot(n, rng)
				list, err := q.Alternatives(from, to, 3)
				if err != nil || list[0].LengthM < 5000 {
					continue
				}
				asked++
				others += len(list) - 1
				if len(list) > 1 {
					with++
				}
				best := float64(list[0].Cost)
				for i, p := range list[1:] {
					if p.Cost < list[0].Cost || float64(p.Cost) > 1.3*best {
						t.Errorf("another way costs %d, the best %d", p.Cost, list[0].Cost)
					}
					if last := p.Steps[len(p.Steps)-1]; p.Steps[0].Edge() != from.Edge || p.Steps[0].FromCm != from.Cm || last.ToCm != to.Cm || last.Edge() != to.Edge {
						t.Errorf("another way leads elsewhere")
					}
					for _, before := range list[:i+1] {
						if s := shared(r, p, before); s > 0.8*best {
							t.Errorf("another way shares %.0f %% of the best cost", 100*s/best)
						}
					}
					windows += pieces(t, r, rng, p, best/8)
				}
			}
			t.Logf("%d of %d pairs have another way, %d others, %d pieces checked", with, asked, others, windows)
			if float64(with) < tc.least*float64(asked) || windows < 10*others/2 {
				t.Errorf("only %d of %d pairs have another way", with, asked)
			}
		})
	}
}

// shared is the cost of what two ways have in common.
func shared(r *road.Router, a, b road.Path) (cost float64) {
	own := map[uint32]bool{}
	for _, s := range a.Steps {
		own[s.Edge()] = true
	}
	for _, s := range b.Steps {
		if own[s.Edge()] {
			cost += float64(r.StepCost(s))
		}
	}
	return cost
}

// pieces checks some random pieces of a way up to a cost, and counts them.
func pieces(t *testing.T, r *road.Router, rng *rand.Rand, p road.Path, most float64) (count int) {
	t.Helper()
	states := road.StatesOf(r.Net, p.Steps)
	for range 10 {
		i := rng.IntN(len(states))
		k, cost := i, uint64(0)
		for k+1 < len(states) && float64(cost+r.StepCost(p.Steps[k+1])) <= most {
			k++
			cost += r.StepCost(p.Steps[k])
		}
		if k == i {
			continue
		}
		count++
		dist := road.Dijkstra(r, []road.Seed{road.SeedAt(states[i])}, map[uint32]bool{states[k]: true})
		if dist[states[k]] != cost {
			t.Errorf("a piece costs %d, the best way %d", cost, dist[states[k]])
		}
	}
	return count
}
