package life

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// By hand: 2750 + 2×75 + 2×40 + 90 + 0.84×75 + 1.09×20 + 0.508×40 + 60 + 30 + 5
// = 2750 + 150 + 80 + 90 + 63 + 21.8 + 20.32 + 95 = 3270.12.
func TestLoad(t *testing.T) {
	l := Load{AllowedKg: 3500, EmptyKg: 2750, Adults: 2, Children: 2, GearKg: 90,
		Levels: Levels{Diesel: 75, DEF: 20, LPG: 40, Fresh: 60, Grey: 30, Cassette: 5}}
	if got := l.Kg(); math.Abs(got-3270.12) > 1e-9 {
		t.Errorf("Kg = %v, want 3270.12", got)
	}
	if got := l.MaxFreshL(120); got != 120 {
		t.Errorf("MaxFreshL = %v, want all 120", got)
	}
	if w := l.Says("fresh", 120); !w.Nothing() {
		t.Errorf("warning %+v", w)
	}
	l.GearKg += 230 // 0.12 kg too much
	if got := l.MaxFreshL(120); math.Abs(got-59.88) > 1e-9 {
		t.Errorf("MaxFreshL = %v, want 59.88", got)
	}
	if w := l.Says("fresh", 120); w.Kind != HeavyWith || math.Abs(w.Values["most"].N-59.88) > 1e-9 {
		t.Errorf("warning %+v", w)
	}
	l.GearKg += 100
	if w := l.Says("fresh", 120); l.MaxFreshL(120) != 0 || w.Kind != HeavyWithout || math.Abs(w.Values["over"].N-40.12) > 1e-9 {
		t.Errorf("warning %+v", w)
	}
	if got := UsualGearKg(Party{Adults: 2, Children: 2}, 7); got != 110 {
		t.Errorf("UsualGearKg = %v, want 110 (EN 1646-2)", got)
	}
}

func TestMaxFreshIsAllowed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Load{AllowedKg: 3500, EmptyKg: rapid.Float64Range(2500, 3400).Draw(t, "empty"), Adults: rapid.IntRange(0, 6).Draw(t, "adults"),
			GearKg: rapid.Float64Range(0, 400).Draw(t, "gear"), Levels: Levels{Fresh: rapid.Float64Range(0, 150).Draw(t, "fresh")}}
		fresh := l.MaxFreshL(150)
		l.Levels.Fresh = fresh
		if fresh > 0 && l.SpareKg() < -1e-9 {
			t.Errorf("%v L are %v kg too heavy", fresh, -l.SpareKg())
		}
		l.Levels.Fresh++
		if fresh < 150 && l.SpareKg() > 0 {
			t.Error("a litre more would be allowed")
		}
	})
}
