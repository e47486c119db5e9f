package life

import "testing"

// TestDensities holds what a litre weighs against the standards that trade in it.
func TestDensities(t *testing.T) {
	for _, c := range []struct {
		tank      string
		low, high float64
		source    string
	}{
		{"diesel", 0.820, 0.845, "EN 590, at 15 °C, temperate grades (ncheurope.com)"},
		{"def", 1.0870, 1.0930, "ISO 22241-1, at 20 °C (de.zxc.wiki, AUS 32)"},
		{"lpg", 0.498, 0.510, "propane under its own pressure, 20 to 15 °C (kadatec.cz); EN 589 leaves the density to the mixture"},
		{"fresh", 0.998, 1.0, "water, 20 to 4 °C, from memory"},
		{"grey", 0.998, 1.01, "water with soap, from memory"},
		{"cassette", 0.998, 1.02, "mostly water, from memory"},
	} {
		if kg := KgPer(c.tank); kg < c.low || kg > c.high {
			t.Errorf("%s: %v kg/L, want %v to %v: %s", c.tank, kg, c.low, c.high, c.source)
		}
	}
	if KgPer("battery") != 0 {
		t.Error("a full battery weighs more than an empty one")
	}
	// EN 1646-2 (masses of motor caravans): 10 kg a person and 10 kg a metre for personal
	// things, 75 kg a person; from memory. By hand: 4 people in 6.9 m.
	if kg := UsualGearKg(Party{Adults: 2, Children: 2}, 6.9); kg != 109 || AdultKg != 75 {
		t.Errorf("%v kg of things, %v kg an adult, want 109 and 75", kg, AdultKg)
	}
}
