package solve

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"ullage/planner/internal/model"
)

// TestDearest compares with the definition, at every place where a price changes.
func TestDearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		one, other := drawPurse(t, "one"), drawPurse(t, "other")
		floor := rapid.Float64Range(0, 60).Draw(t, "floor")
		got := dearest(one.hand, one.layers, other.hand, other.layers, floor)
		want := math.Inf(-1)
		if total(one) < total(other)-model.Slack {
			want = math.Inf(1)
		}
		from := max(floor, min(one.hand, other.hand))
		for _, x := range append(slices.Concat(ends(one), ends(other)), from) {
			if x >= from && x <= max(total(other), from) {
				want = max(want, costOf(one, x)-costOf(other, x))
			}
		}
		if math.Abs(got-want) > 1e-9 && got != want {
			t.Fatalf("dearest %v, want %v", got, want)
		}
	})
}

// TestCovers: one thing in which a partial plan has less, or a night too few or too
// many, is enough for it not to cover the other.
func TestCovers(t *testing.T) {
	own := look{cost: 10, reach: 100, free: [4]float32{1, 2, 3, 4}, restored: 5, nights: 2, least: 2, few: 2}
	for name, worse := range map[string]func(k *look){
		"cost":          func(k *look) { k.cost += 1e-6 },
		"reach":         func(k *look) { k.reach -= 1e-6 },
		"first tank":    func(k *look) { k.free[0] -= 0.1 },
		"second tank":   func(k *look) { k.free[1] -= 0.1 },
		"third tank":    func(k *look) { k.free[2] -= 0.1 },
		"fourth tank":   func(k *look) { k.free[3] -= 0.1 },
		"restored tank": func(k *look) { k.restored -= 0.1 },
		"a night less":  func(k *look) { k.nights-- },
		"a night more":  func(k *look) { k.nights++ },
	} {
		k := own
		if !k.covers(&own) {
			t.Error("one does not cover its equal")
		}
		if worse(&k); k.covers(&own) {
			t.Errorf("%s: covers", name)
		}
	}
}

type hands struct {
	hand   float64
	layers []model.Layer
}

func drawPurse(t *rapid.T, name string) hands {
	h := hands{hand: rapid.SampledFrom([]float64{132.5806, 8.5, 0.1, 20}).Draw(t, name+" hand")}
	price := 0.0
	for range rapid.IntRange(0, 4).Draw(t, name+" layers") {
		price += rapid.Float64Range(0.001, 0.5).Draw(t, "price")
		h.layers = append(h.layers, model.Layer{Price: price, Amount: rapid.Float64Range(0.01, 60).Draw(t, "amount")})
	}
	return h
}

func total(h hands) float64 {
	sum := h.hand
	for _, l := range h.layers {
		sum += l.Amount
	}
	return sum
}

func ends(h hands) []float64 {
	out := []float64{h.hand}
	for _, l := range h.layers {
		out = append(out, out[len(out)-1]+l.Amount)
	}
	return out
}

// costOf is the least that having x in hand costs, at most with all layers.
func costOf(h hands, x float64) float64 {
	cost, at := 0.0, h.hand
	for _, l := range h.layers {
		take := min(max(x-at, 0), l.Amount)
		cost += take * l.Price
		at += l.Amount
	}
	return cost
}

// TestKeep: labels that are kept say what they said, and so do those they come from.
func TestKeep(t *testing.T) {
	g := rand.New(rand.NewPCG(1, 8))
	a := labels{m: &model.Model{Tanks: make([]model.Tank, 2)}}
	s := model.NewState(2)
	for id := range int32(500) {
		s.Hand[0], s.Hand[1] = float64(id), -float64(id)
		s.Layers[1] = make([]model.Layer, g.IntN(3))
		for k := range s.Layers[1] {
			s.Layers[1][k].Amount = float64(id)
		}
		a.add(label{cost: float64(id), parent: id - 1 - g.Int32N(min(id, 9)+1)}, s)
	}
	says := func(id int32) (out []float64) {
		for ; id >= 0; id = a.all[id].parent {
			out = append(append(out, a.all[id].cost), a.handOf(id)...)
			for _, l := range a.layersAll(id) {
				out = append(out, l.Amount)
			}
		}
		return out
	}
	ids := []int32{480, 499, 471}
	var was [][]float64
	for _, id := range ids {
		was = append(was, says(id))
	}
	a.keep(ids)
	for k, id := range ids {
		if !slices.Equal(says(id), was[k]) {
			t.Errorf("label %d of %d says %v, want %v", id, len(a.all), says(id), was[k])
		}
	}
	if len(a.all) > 400 || len(a.hand) != 2*len(a.all) {
		t.Errorf("%d labels are kept", len(a.all))
	}
}
