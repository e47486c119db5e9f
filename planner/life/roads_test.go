package life

import (
	"math"
	"testing"
)

// Limits as the sources in roads.go give them.
func TestSpeedLimit(t *testing.T) {
	for _, c := range []struct {
		country, road string
		kg, want      float64
		known         bool
	}{
		{"FR", Motorway, 3500, 130, true}, {"FR", Motorway, 4400, 110, true}, {"FR", Rural, 4400, 80, true},
		{"DE", Rural, 3500, 100, true}, {"DE", Motorway, 4000, 100, true}, {"DE", Town, 4000, 50, true},
		{"DK", Rural, 4000, 70, true}, {"XX", Rural, 3500, 0, false}, {"DE", Rural, 9000, 0, false}, {"DE", "lane", 3500, 0, false},
	} {
		if got, known := SpeedLimit(c.country, c.road, c.kg); got != c.want || known != c.known {
			t.Errorf("SpeedLimit(%s, %s, %v) = %v, %v, want %v, %v", c.country, c.road, c.kg, got, known, c.want, c.known)
		}
	}
	for country, l := range heavy {
		if car, ok := light[country]; ok && (l.rural > car.rural || l.motorway > car.motorway) {
			t.Errorf("%s: heavy may drive faster than light", country)
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
		if with := max(c.min, 0) * WithBreaks(60); with < c.min+BreakMin*float64(Breaks(c.min))-1e-9 {
			t.Errorf("WithBreaks leaves %v min for %v at the wheel", with, c.min)
		}
	}
	if got := Pace(Motorway, 80); got != 72 {
		t.Errorf("Pace(motorway, 80) = %v, want 72", got)
	}
}
