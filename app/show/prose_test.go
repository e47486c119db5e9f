package show

import (
	"testing"

	"ullage/app/say"
)

// Miles, US gallons and degrees Fahrenheit by hand with the factors of NIST
// SP 811 (2008), appendix B: 1 mi is 1.609344 km, 1 gal is 3.785412 L.
func TestProse(t *testing.T) {
	us, gb := say.Voice{Units: "american"}, say.Voice{Units: "british"}
	for _, c := range []struct{ got, want string }{
		{Prose(say.Voice{}, "km 80: refuel 40 L at 20 °C, 12 km off"), "km 80: refuel 40 L at 20 °C, 12 km off"},
		{Prose(us, "14:30 km 80 Pumps: refuel diesel (40 L), 20 °C, 3500 kg, 12.0 km off"), "14:30 mile 50 Pumps: refuel diesel (10.6 gal), 68 °F, 7716 lb, 7.5 mi off"},
		{Prose(us, "At -5 °C; heat it at 20 to 45 °C, 55–60 °C"), "At 23 °F; heat it at 68 to 113 °F, 131–140 °F"},
		{Prose(us, "height limit 2.70 m, 250 m on; 3.5 t; Diesel counted as 1.68 EUR/L"), "height limit 8.86 ft, 820.2 ft on; 3.5 t; Diesel counted as 6.36 EUR/gal"},
		{Prose(gb, "height limit 2.70 m; 3.5 t; 1.68 EUR/L, 30 to 40 km"), "height limit 2.70 m; 3.5 t; 1.68 EUR/L, 19 to 25 mi"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
