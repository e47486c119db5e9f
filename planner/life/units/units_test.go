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

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		id     string
		stored float64
		want   string
	}{
		{"mpg-imp", 10.5, "26.9 mpg (imp)"}, {"mpg-us", 10.5, "22.4 mpg (US)"}, {"L/100km", 10.5, "10.5 L/100 km"}, {"mi", 250, "155 mi"},
		{"F", 20, "68 °F"}, {"C", -0.2, "0 °C"}, {"gal-us", 90, "23.8 gal (US)"}, {"lb", 3500, "7716 lb"}, {"ft", 2.9, "9.5 ft"}, {"mpg-us", 0, "– mpg (US)"},
	} {
		u, _ := Of(c.id)
		if got := u.Format(c.stored); got != c.want {
			t.Errorf("%v in %s = %q, want %q", c.stored, c.id, got, c.want)
		}
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
		if q := s.Validate(); q != "" {
			t.Errorf("%s shows %s in a unit of something else", name, q)
		}
	}
	if got := American().Unit(Temperature).Format(100); got != "212 °F" {
		t.Errorf("100 °C is %s", got)
	}
	if got := British().Unit(Volume).Format(90); got != "90 L" {
		t.Errorf("90 L is %s", got)
	}
	if q := (System{Mass: "mi"}).Validate(); q != Mass {
		t.Errorf("mass in miles: %q", q)
	}
	if got := (System{Mass: "mi"}).Unit(Mass).ID; got != "kg" {
		t.Errorf("mass in miles is shown in %s", got)
	}
}

// ISO 4217: two digits are usual, ISK has none, TND three (from memory).
func TestMoney(t *testing.T) {
	for _, c := range []struct {
		amount     float64
		code, want string
	}{{12.5, "EUR", "12.50 EUR"}, {1234.5, "ISK", "1234 ISK"}, {3, "TND", "3.000 TND"}, {-0.001, "EUR", "0.00 EUR"}, {math.NaN(), "EUR", "– EUR"}} {
		if got := Money(c.amount, c.code); got != c.want {
			t.Errorf("Money(%v, %s) = %q, want %q", c.amount, c.code, got, c.want)
		}
	}
	if !ValidCurrency("EUR") || ValidCurrency("eur") || ValidCurrency("€") || ValidCurrency("EURO") {
		t.Error("currency codes are not told apart")
	}
}
