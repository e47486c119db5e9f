package life

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ullage/planner/fact"
)

// kWh per kg 12.87 and 12.7 (kadatec), per litre 6.5 and 7.4 (calculated from
// its values), 27.2 L × 0.8 × 0.51 = 11.1 kg.
func TestGasTables(t *testing.T) {
	propane, butane := Gas{}, Gas{ButaneShare: 1}
	for _, c := range []struct {
		what            string
		got, want, near float64
	}{
		{"propane kWh/kg", propane.KWhPerKg(), 12.87, 0.02}, {"butane kWh/kg", butane.KWhPerKg(), 12.7, 0.02},
		{"propane kWh/L", propane.KWhPerL(), 6.5, 0.06}, {"butane kWh/L", butane.KWhPerL(), 7.4, 0.06},
		{"cylinder kg", GasStore{1, 27.2}.FullL() * propane.KgPerL(), 11.1, 0.1},
		{"two cylinders L", GasStore{2, 27.2}.FullL(), 43.5, 0.1},
		// Vapour pressures at 15 °C: propane 7.3 bar, at 0 °C
		// 4.7, butane at 20 °C 2.1 (any gas table; from memory).
		{"propane 15 °C", propaneBar(15), 7.3, 0.15}, {"propane 0 °C", propaneBar(0), 4.74, 0.1}, {"butane 20 °C", butaneBar(20), 2.08, 0.1},
	} {
		if math.Abs(c.got-c.want) > c.near {
			t.Errorf("%s = %v, want %v ± %v", c.what, c.got, c.want, c.near)
		}
	}
}

func TestEvaporates(t *testing.T) {
	for _, c := range []struct {
		butane, at, low, high float64
	}{
		{0, -20, 1, 1}, {0, -45, 0, 0}, {1, -5, 0, 0}, {1, 15, 1, 1}, // either one alone, by its boiling point
		{0.3, -10, 0.3, 0.9}, {0.6, -10, 0.05, 0.7}, // the butane stays
	} {
		if got := (Gas{c.butane}).Evaporates(c.at); got < c.low || got > c.high {
			t.Errorf("butane %v at %v °C: %v evaporates, want %v to %v", c.butane, c.at, got, c.low, c.high)
		}
	}
	for _, c := range []struct {
		butane, at float64
		want       fact.Kind
	}{{0, -15, ""}, {0.6, -10, GasScarce}, {1, -10, GasStuck}, {1, 15, ""}} {
		if got := (Gas{c.butane}).InCold(c.at); got.Kind != c.want {
			t.Errorf("butane %v at %v °C: %+v, want %q", c.butane, c.at, got, c.want)
		}
	}
	if got, want := (Gas{0.6}).InCold(-10), fact.Of(GasScarce, fact.V{"cold": fact.Celsius(-10), "part": fact.Share((Gas{0.6}).Evaporates(-10), 0), "freezing": fact.Celsius(0)}); !got.Equal(want) {
		t.Errorf("summer gas at −10 °C: %+v, want %+v", got, want)
	}
}

// Moles by the weights of their atoms: C 12.011, H 1.008 g/mol (IUPAC).
func TestMoles(t *testing.T) {
	if p, b := 3*12.011+8*1.008, 4*12.011+10*1.008; math.Abs(propaneMol-p) > 0.01 || math.Abs(butaneMol-b) > 0.01 {
		t.Errorf("propane %v, butane %v g/mol, want %v and %v", propaneMol, butaneMol, p, b)
	}
}

// Rayleigh's equation against boiling off a ten-thousandth at a time.
func TestEvaporatesAgainstSteps(t *testing.T) {
	for _, c := range []struct{ butane, at float64 }{{0.2, -5}, {0.4, -10}, {0.6, -15}, {0.3, -25}} {
		pp, pb := propaneBar(c.at), butaneBar(c.at)
		p, b := (1-c.butane)/propaneMol, c.butane/butaneMol
		for {
			x := p / (p + b)
			if x*pp+(1-x)*pb < airBar+regulatorBar {
				break
			}
			d := 1e-4 * (p + b)
			y := x * pp / (x*pp + (1-x)*pb)
			p, b = p-d*y, b-d*(1-y)
		}
		want := 1 - p*propaneMol - b*butaneMol
		if got := (Gas{c.butane}).Evaporates(c.at); math.Abs(got-want) > 0.01 {
			t.Errorf("butane %v at %v °C: %v, in steps %v", c.butane, c.at, got, want)
		}
	}
}

func TestGasProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := rapid.Float64Range(0, 1).Draw(t, "butane")
		c := rapid.Float64Range(-60, 40).Draw(t, "°C")
		share := (Gas{b}).Evaporates(c)
		if !(share >= 0 && share <= 1) {
			t.Fatalf("%v evaporates", share)
		}
		if (Gas{b}).Evaporates(c+1) < share-1e-9 {
			t.Error("warmer, less evaporates")
		}
		if (Gas{b + 0.01}).Evaporates(c) > share+1e-9 {
			t.Error("more butane, more evaporates")
		}
	})
}
