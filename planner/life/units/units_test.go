package units

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// NIST SP 811 (2008), appendix B.8, and Handbook 44, appendix C. Consumption:
// 235.215 ÷ mpg (US) and 282.481 ÷ mpg (imp) are what they give (SP 811 B.8
// "mile per gallon (US)": 235.215 divided by it); six digits.
func TestNIST(t *testing.T) {
	for _, c := range []struct {
		id            string
		shown, stored float64
	}{
		{"mi", 1, 1.609344}, {"ft", 1, 0.3048}, {"mph", 1, 1.609344}, {"gal-us", 1, 3.785412}, {"gal-imp", 1, 4.54609},
		{"lb", 1, 0.45359237}, {"F", 212, 100}, {"F", 32, 0}, {"F", -40, -40}, {"mpg-us", 235.215, 1}, {"mpg-us", 1, 235.215}, {"mpg-imp", 282.481, 1},
		{"MJ", 3.6, 1}, {"km", 7, 7},
	} {
		u, ok := Of(c.id)
		if !ok {
			t.Fatalf("no unit %s", c.id)
		}
		got, err := u.Read(c.shown)
		if err != nil || math.Abs(got-c.stored) > 3e-6*(1+math.Abs(c.stored)) {
			t.Errorf("%v %s = %v (%v), want %v", c.shown, c.id, got, err, c.stored)
		}
	}
}

func TestShow(t *testing.T) {
	for _, c := range []struct {
		id           string
		stored, want float64
		symbol       string
		digits       int
	}{
		{"mpg-imp", 10.5, 26.903, "mpg (imp)", 1}, {"mpg-us", 10.5, 22.401, "mpg (US)", 1}, {"L/100km", 10.5, 10.5, "L/100 km", 1}, {"mi", 250, 155.343, "mi", 0},
		{"F", 20, 68, "°F", 0}, {"C", -0.2, -0.2, "°C", 0}, {"gal-us", 90, 23.775, "gal (US)", 1}, {"lb", 3500, 7716.179, "lb", 0}, {"ft", 2.9, 9.514, "ft", 1},
		{"kWh", 10, 10, "kWh", 1}, {"MJ", 10, 36, "MJ", 1},
	} {
		u, _ := Of(c.id)
		if got := u.Show(c.stored); math.Abs(got-c.want) > 1e-3 || u.Symbol != c.symbol || u.Digits != c.digits {
			t.Errorf("%v in %s = %v %s with %d digits, want %v %s with %d", c.stored, c.id, got, u.Symbol, u.Digits, c.want, c.symbol, c.digits)
		}
	}
	if u, _ := Of("mpg-us"); !math.IsInf(u.Show(0), 1) {
		t.Errorf("what uses nothing goes %v miles", u.Show(0))
	}
}

func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(all).Draw(t, "unit")
		stored := rapid.Float64Range(0.001, 1e6).Draw(t, "stored")
		if u.Quantity == Temperature {
			stored = rapid.Float64Range(-273.15, 1000).Draw(t, "°C")
		}
		back, err := u.Read(u.Show(stored))
		if err != nil || math.Abs(back-stored) > 1e-9*(1+math.Abs(stored)) {
			t.Errorf("%v → %v %s → %v, %v", stored, u.Show(stored), u.ID, back, err)
		}
		if per := u.ShowPer(2); !math.IsNaN(per) && math.Abs(per*u.Show(stored)-2*stored) > 1e-9*math.Abs(stored) {
			t.Errorf("a rate of 2 per stored unit costs %v instead of %v", per*u.Show(stored), 2*stored)
		}
	})
}

func TestRefuses(t *testing.T) {
	for _, c := range []struct {
		id    string
		shown float64
	}{{"kg", -1}, {"mpg-us", 0}, {"mpg-imp", -5}, {"F", -500}, {"km", math.NaN()}, {"L", math.Inf(1)}} {
		u, _ := Of(c.id)
		if got, err := u.Read(c.shown); err == nil {
			t.Errorf("%v %s is read as %v", c.shown, c.id, got)
		}
	}
}

func TestSystem(t *testing.T) {
	for name, s := range map[string]System{"metric": Metric(), "british": British(), "american": American()} {
		for q, id := range s {
			if u := s.Unit(q); u.ID != id || u.Quantity != q {
				t.Errorf("%s shows %s in a unit of something else: %s", name, q, id)
			}
		}
	}
	if u := American().Unit(Temperature); u.Symbol != "°F" || u.Show(100) != 212 {
		t.Errorf("100 °C is %v %s", u.Show(100), u.Symbol)
	}
	if u := British().Unit(Volume); u.Symbol != "L" || u.Show(90) != 90 {
		t.Errorf("90 L is %v %s", u.Show(90), u.Symbol)
	}
	if got := (System{Mass: "mi"}).Unit(Mass).ID; got != "kg" {
		t.Errorf("mass in miles is shown in %s", got)
	}
}

// ISO 4217: two digits are usual, ISK has none, TND three (from memory).
func TestMoney(t *testing.T) {
	for code, want := range map[string]int{"EUR": 2, "ISK": 0, "TND": 3, "XXX": 2} {
		if got := MoneyDigits(code); got != want {
			t.Errorf("%s has %d digits, want %d", code, got, want)
		}
	}
	if !ValidCurrency("EUR") || ValidCurrency("eur") || ValidCurrency("€") || ValidCurrency("EURO") || ValidCurrency("EUO") || ValidCurrency("D A") || ValidCurrency("XDR") || !ValidCurrency("ZWG") {
		t.Error("currency codes are not told apart")
	}
}
