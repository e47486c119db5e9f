package life

import (
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"ullage/planner/fact"
)

// By hand: 2750 + 2×75 + 2×40 + 90 + 0.84×75 + 1.09×20 + 0.508×40 + 60 + 30 + 5
// = 2750 + 150 + 80 + 90 + 63 + 21.8 + 20.32 + 95 = 3270.12.
func TestLoad(t *testing.T) {
	l := Load{AllowedKg: 3500, EmptyKg: 2750, Adults: 2, Children: 2, GearKg: 90, Levels: []Content{
		{"diesel", 75}, {"def", 20}, {"lpg", 40}, {"fresh", 60}, {"grey", 30}, {"cassette", 5}, {"battery", 100}}}
	if got := l.Kg(); math.Abs(got-3270.12) > 1e-9 {
		t.Errorf("Kg = %v, want 3270.12", got)
	}
	litres, water, plate := func(n float64) fact.Value { return fact.Quantity(n, "L", 0) }, fact.Tank("fresh", ""), fact.Kg(3500)
	for _, c := range []struct {
		name       string
		more, most float64
		want       fact.Fact
	}{
		{"as it is", 0, 120, fact.Fact{}},
		{"0.12 kg too much", 230, 59.88, fact.Of(HeavyWith, fact.V{"over": fact.Kg(0.12), "most": litres(59.88), "tank": water, "allowed": plate})},
		{"60 L fit, 120 do not", 210, 79.88, fact.Of(HeavyFull, fact.V{"most": litres(79.88), "tank": water})},
		{"too heavy without", 330, 0, fact.Of(HeavyWithout, fact.V{"over": fact.Kg(40.12), "tank": water, "allowed": plate})},
	} {
		heavy := l
		heavy.GearKg += c.more
		if got := heavy.Most("fresh", 120); math.Abs(got-c.most) > 1e-9 {
			t.Errorf("%s: at most %v L, want %v", c.name, got, c.most)
		}
		got := heavy.Says("fresh", 120)
		for name, v := range got.Values { // by hand to a millionth
			v.N = math.Round(1e6*v.N) / 1e6
			got.Values[name] = v
		}
		if !got.Equal(c.want) {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
	heavy := l
	heavy.GearKg += 230
	if got := heavy.Says("", 0); got.Kind != HeavyWithout || !reflect.DeepEqual(got.Values["tank"], fact.Value{}) {
		t.Errorf("without a tank that gives way: %+v", got)
	}
	// Any tank can give way: 1.09 kg for a litre of exhaust fluid, 0.12 kg too much.
	l.GearKg += 230
	if got := l.Most("def", 20); math.Abs(got-(20-0.12/1.09)) > 1e-9 {
		t.Errorf("at most %v L of exhaust fluid, want %v", got, 20-0.12/1.09)
	}
	if got := l.Most("battery", 110); got != 110 {
		t.Errorf("of the battery %v, want all: it weighs nothing more when full", got)
	}
	if got := UsualGearKg(Party{Adults: 2, Children: 2}, 7); got != 110 {
		t.Errorf("UsualGearKg = %v, want 110 (EN 1646-2)", got)
	}
}

func TestMaxFreshIsAllowed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Load{AllowedKg: 3500, EmptyKg: rapid.Float64Range(2500, 3400).Draw(t, "empty"), Adults: rapid.IntRange(0, 6).Draw(t, "adults"),
			GearKg: rapid.Float64Range(0, 400).Draw(t, "gear"), Levels: []Content{{"fresh", rapid.Float64Range(0, 150).Draw(t, "fresh")}}}
		fresh := l.Most("fresh", 150)
		l.Levels[0].Level = fresh
		if fresh > 0 && l.SpareKg() < -1e-9 {
			t.Errorf("%v L are %v kg too heavy", fresh, -l.SpareKg())
		}
		l.Levels[0].Level++
		if fresh < 150 && l.SpareKg() > 0 {
			t.Error("a litre more would be allowed")
		}
	})
}
