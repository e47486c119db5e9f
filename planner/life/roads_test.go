package life

import (
	"math"
	"testing"
)

// Limits as the sources in roads.go give them; a heavy vehicle is slower, and
// planned to be no faster than any country of the table lets it.
func TestMassClasses(t *testing.T) {
	for _, c := range []struct{ kg, top float64 }{{2800, 95}, {3500, 95}, {3501, 80}, {4250, 80}, {7500, 80}} {
		if got := TopKmh(c.kg); got != c.top {
			t.Errorf("TopKmh(%v) = %v, want %v", c.kg, got, c.top)
		}
		if says := Heavier(c.kg); says.Nothing() != (c.kg <= 3500) {
			t.Errorf("%v kg: %+v", c.kg, says)
		}
	}
	if v := Heavier(4250).Values; v["allowed"].N != 4250 || v["top"].N != 80 {
		t.Errorf("of 4250 kg is said %+v", v)
	}
	rows := map[string][2]float64{}
	for _, row := range HeavyLimits().List {
		rows[row.Fact.Values["country"].S] = [2]float64{row.Fact.Values["rural"].N, row.Fact.Values["motorway"].N}
	}
	for country, want := range map[string][2]float64{"AT": {70, 80}, "BE": {90, 90}, "FR": {80, 110}} {
		if rows[country] != want {
			t.Errorf("%s has %v, want %v", country, rows[country], want)
		}
	}
	for _, l := range heavy {
		if l.motorway < heavyTopKmh || l.rural > l.motorway {
			t.Errorf("%+v, planned with %v", l, heavyTopKmh)
		}
	}
}

// UK Highway Code, rule 91: 15 minutes after every two hours.
func TestBreaks(t *testing.T) {
	for _, c := range []struct {
		min  float64
		want int
	}{{0, 0}, {-5, 0}, {math.NaN(), 0}, {120, 0}, {121, 1}, {240, 1}, {241, 2}, {600, 4}} {
		if got := Breaks(c.min); got != c.want {
			t.Errorf("Breaks(%v) = %v, want %v", c.min, got, c.want)
		}
	}
}
