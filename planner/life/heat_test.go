package life

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// HeatUpH against steps of a second; what a heater cannot do takes for ever.
func TestHeatUp(t *testing.T) {
	s, inside, seconds := shell(3), -15.0, 0
	for ; inside < 20; seconds++ {
		inside += (4000 - s.LossWPerK()*(inside+15)) / (heatCapacityMJ * 1e6)
	}
	if got := s.HeatUpH(4000, -15, 20); math.Abs(got-float64(seconds)/3600) > 0.01 {
		t.Errorf("HeatUpH = %v h, in steps %v", got, float64(seconds)/3600)
	}
	if got := shell(1).HeatUpH(2000, -15, 20); !math.IsInf(got, 1) {
		t.Errorf("2 kW heat a grade 1 vehicle at −15 °C in %v h", got)
	}
	if got := s.HeatUpH(4000, 25, 20); got != 0 {
		t.Errorf("cooling takes %v h", got)
	}
}

// A 6.8 m low-profile.
func shell(grade int) Shell { return Shell{LengthM: 6.8, WidthM: 2.32, HeightM: 2.9, Grade: grade} }

// EN 1646-1: grade 3 reaches and holds 20 °C at −15 °C, grade 2 at 0 °C.
// Heaters of that class give 4–6 kW (from memory); heating up from cold takes
// up to twice the holding, so holding may ask for 0.5–0.85 of 4 kW at most.
func TestGrades(t *testing.T) {
	for _, c := range []struct {
		grade    int
		outside  float64
		low, hig float64 // kW
	}{{3, -15, 2, 3.4}, {2, 0, 1.3, 2.6}} {
		kw := shell(c.grade).LossWPerK() * (20 - c.outside) / 1000
		t.Logf("grade %d at %v °C: %.2f kW", c.grade, c.outside, kw)
		if kw < c.low || kw > c.hig {
			t.Errorf("grade %d at %v °C: %.2f kW, want %v to %v", c.grade, c.outside, kw, c.low, c.hig)
		}
	}
}

// 10 L by 45 K are 0.523 kWh and 41 g of propane, 47 g at 87 % (calculated).
func TestWaterHeat(t *testing.T) {
	kwh := 10 * waterWhLK * 45 / 1000
	g := 1000 * kwh / (Gas{}).KWhPerKg()
	if math.Abs(kwh-0.523) > 0.001 || math.Abs(g-41) > 1 || math.Abs(g/heaterShare-47) > 1 {
		t.Errorf("10 L by 45 K: %v kWh, %v g, %v g with losses", kwh, g, g/heaterShare)
	}
	if WaterHeatKWh(0, 60, 10) != 0 || WaterHeatKWh(30, 60, 10) <= WaterHeatKWh(30, 40, 10) {
		t.Error("hotter water costs nothing")
	}
	if WaterHeatKWh(100, 40, 45) != WaterHeatKWh(1, 40, 45) { // what is warm enough already
		t.Error("water that is warmer than wished is heated")
	}
}

// The average over the weather against adding it up in steps.
func TestHeatAgainstSteps(t *testing.T) {
	s, air := shell(2), Air{MeanC: 16, DayC: 16, NightC: 16, SpreadC: 4}
	var want float64
	const steps = 20000
	for i := range steps {
		z := math.Sqrt2 * math.Erfinv(2*(float64(i)+0.5)/steps-1)
		out := air.MeanC + air.SpreadC*z
		want += (8*max(s.LossWPerK()*(15-out)-thingsW-2*personW, 0) + 16*max(s.LossWPerK()*(20-out)-thingsW-dayW-personW, 0)) / 1000 / steps
	}
	if got := s.heatKWh(heating{air, 20, 15, 24, 2}); math.Abs(got/want-1) > 0.01 {
		t.Errorf("heatKWh = %v, in steps %v", got, want)
	}
}

func TestHeatProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := shell(rapid.IntRange(0, 3).Draw(t, "grade"))
		c := rapid.Float64Range(-30, 35).Draw(t, "°C")
		air := Air{MeanC: c, DayC: c + 3, NightC: c - 4, SpreadC: rapid.Float64Range(0, 6).Draw(t, "spread")}
		inside, hours := rapid.Float64Range(10, 25).Draw(t, "inside"), rapid.Float64Range(0, 24).Draw(t, "hours")
		kwh := s.heatKWh(heating{air, inside, inside - 5, hours, 2})
		if !(kwh >= 0) {
			t.Fatalf("%v kWh", kwh)
		}
		colder := air
		colder.DayC, colder.NightC = air.DayC-1, air.NightC-1
		const near = 1e-9 // kWh
		first := rapid.Float64Range(0, 3000).Draw(t, "first heater")
		if left := s.beyondKWh(heating{air, inside, inside - 5, hours, 2}, first); left > kwh+near || left < kwh-first*hours/1000-near {
			t.Errorf("of %v kWh a heater of %v W leaves %v in %v h", kwh, first, left, hours)
		}
		if s.heatKWh(heating{colder, inside, inside - 5, hours, 2}) < kwh-near || s.heatKWh(heating{air, inside + 1, inside - 4, hours, 2}) < kwh-near ||
			s.heatKWh(heating{air, inside, inside - 5, hours + 1, 2}) < kwh-near || s.heatKWh(heating{air, inside, inside - 5, hours, 3}) > kwh+near {
			t.Error("colder, warmer inside or longer needs less, or people cool")
		}
	})
}
