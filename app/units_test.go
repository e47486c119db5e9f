package page

import (
	"strings"
	"testing"

	"ullage/app/say"
)

// Miles, US gallons and degrees Fahrenheit by hand with the factors of NIST
// SP 811 (2008), appendix B: 1 mi is 1.609344 km, 1 gal is 3.785412 L.
func TestProse(t *testing.T) {
	us, gb := say.Voice{Units: "american"}, say.Voice{Units: "british"}
	for _, c := range []struct{ got, want string }{
		{prose(say.Voice{}, "km 80: refuel 40 L at 20 °C, 12 km off"), "km 80: refuel 40 L at 20 °C, 12 km off"},
		{prose(us, "14:30 km 80 Pumps: refuel diesel (40 L), 20 °C, 3500 kg, 12.0 km off"), "14:30 mile 50 Pumps: refuel diesel (10.6 gal), 68 °F, 7716 lb, 7.5 mi off"},
		{prose(us, "At -5 °C; heat it at 20 to 45 °C, 55–60 °C"), "At 23 °F; heat it at 68 to 113 °F, 131–140 °F"},
		{prose(us, "height limit 2.70 m, 250 m on; 3.5 t; Diesel counted as 1.68 EUR/L"), "height limit 8.86 ft, 820.2 ft on; 3.5 t; Diesel counted as 6.36 EUR/gal"},
		{prose(gb, "height limit 2.70 m; 3.5 t; 1.68 EUR/L, 30 to 40 km"), "height limit 2.70 m; 3.5 t; 1.68 EUR/L, 19 to 25 mi"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}

// The units are the machine's: they plan nothing anew, and what is typed is
// kept in metric.
func TestUnitsOfTheForm(t *testing.T) {
	m := planned()
	was := m.Wanted
	m = Update(Update(m, FormToggled{}), Edited{unitsKey, "american"})
	if m.Wanted != was || m.Marks != 1 {
		t.Errorf("other units want plan %d after %d, kept %d times", m.Wanted, was, m.Marks)
	}
	html := drawn(t, m)
	for _, want := range []string{"mile" + thin + "93", thin + "gal", "155.34", "68", "°F"} {
		if !strings.Contains(html, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	if strings.Contains(html, ">km"+thin) {
		t.Error("the page still has kilometres")
	}
	m = Update(m, Edited{"max_km", "100"})
	if !near(m.Trip.Day.MaxKm, 160.9344) || m.Wanted != was+1 {
		t.Errorf("100 miles are kept as %v km", m.Trip.Day.MaxKm)
	}
	m = Update(m, Edited{"price:diesel", "6.43"})
	if !near(m.Trip.Prices["diesel"], 6.43/3.785411784) || !strings.Contains(drawn(t, m), "EUR/gal") {
		t.Errorf("6.43 a gallon are kept as %v a litre", m.Trip.Prices["diesel"])
	}
	if other := Update(m, Edited{"currency", "nok"}); other.Trip.Currency != "NOK" || other.Trip.Prices != nil || m.Trip.Prices == nil {
		t.Errorf("in %s the prices in EUR stay: %v", other.Trip.Currency, other.Trip.Prices)
	}
	m = Update(m, Edited{"inside", "64.4"})
	if !near(m.Trip.Comfort.InsideC, 18) {
		t.Errorf("64.4 °F are kept as %v °C", m.Trip.Comfort.InsideC)
	}
	if m = Update(m, Edited{"inside", "20"}); !strings.Contains(m.Wrong["inside"], "41 to 86") {
		t.Errorf("20 °F inside: %q", m.Wrong["inside"])
	}
}
