package say

import (
	"math"
	"testing"

	"ullage/planner/fact"
)

// 100 km are 62.1 miles, 10 L are 2.64 US gallons, 40 °C are 104 °F, 100 kg are
// 220.5 lb, 2.6 m are 8.53 ft, 10.5 L/100 km are 22.4 US and 26.9 imperial miles per
// gallon (NIST Special Publication 811, appendix B); 1.60 a litre is 6.06 a US gallon.
func TestValue(t *testing.T) {
	for _, tc := range []struct {
		value                     fact.Value
		metric, british, american string
	}{
		{fact.Km(100, 0), "100 km", "62 mi", "62 mi"},
		{fact.Km(8, 1), "8.0 km", "5.0 mi", "5.0 mi"},
		{fact.Km(7.44, -1), "7.4 km", "4.6 mi", "4.6 mi"},
		{fact.Km(7, -1), "7 km", "4.3 mi", "4.3 mi"},
		{fact.Metres(2.6, 2), "2.60 m", "2.60 m", "8.53 ft"},
		{fact.Kg(100), "100 kg", "100 kg", "220 lb"},
		{fact.Celsius(40), "40 °C", "40 °C", "104 °F"},
		{fact.Celsius(-15), "−15 °C", "−15 °C", "5 °F"},
		{fact.Quantity(10, "L", 0), "10 L", "10 L", "2.6 gal"},
		{fact.Quantity(3, "Ah", 0), "3 Ah", "3 Ah", "3 Ah"},
		{fact.Quantity(10.5, "L/100 km", 1), "10.5 L/100 km", "26.9 mpg (imp)", "22.4 mpg"},
		{fact.Mark(100, 0), "km 100", "mile 62", "mile 62"},
		{fact.Rate(1.6, "EUR", "L"), "1.60 EUR/L", "1.60 EUR/L", "6.06 EUR/gal"},
		{fact.Rate(0.4, "EUR", "kWh"), "0.40 EUR/kWh", "0.40 EUR/kWh", "0.40 EUR/kWh"},
		{fact.Money(12.5, "EUR"), "12.50 EUR", "12.50 EUR", "12.50 EUR"},
		{fact.Money(1204, "JPY"), "1204 JPY", "1204 JPY", "1204 JPY"},
		{fact.Clock(1445), "00:05", "00:05", "00:05"},
		{fact.Span(200), "3 h 20 min", "3 h 20 min", "3 h 20 min"},
		{fact.Date("2026-06-12"), "Friday 12 June", "Friday 12 June", "Friday 12 June"},
		{fact.Date("soon"), "soon", "soon", "soon"},
		{fact.Share(0.9, 0), "90 %", "90 %", "90 %"},
		{fact.Tank("fresh", "Fresh water"), "fresh water", "fresh water", "fresh water"},
		{fact.Tank("fresh", "Big tank"), "Big tank", "Big tank", "Big tank"},
		{fact.Tank("urea", ""), "urea", "urea", "urea"},
		{fact.Texts([]string{"a", "b", "c"}), "a, b and c", "a, b and c", "a, b and c"},
		{fact.Texts(nil), "", "", ""},
		{fact.Text("maxheight=2.6 m"), "maxheight=2.6 m", "maxheight=2.6 m", "maxheight=2.6 m"},
		{fact.Clause(fact.Of("place.fuel", nil)), "fuel station", "fuel station", "fuel station"},
		{fact.Clause(fact.Of("not.there", nil)), "‹not.there›", "‹not.there›", "‹not.there›"},
	} {
		for _, as := range []struct{ units, want string }{{"", tc.metric}, {"british", tc.british}, {"american", tc.american}} {
			if got := (Voice{Units: as.units}).Value(tc.value); got != as.want {
				t.Errorf("%s: %+v is %q, want %q", as.units, tc.value, got, as.want)
			}
		}
	}
}

func TestNumbers(t *testing.T) {
	page := Voice{Thin: true}
	for _, tc := range []struct{ got, want string }{
		{page.Km(12345), "12\u202f345\u202fkm"},
		{page.Km(1204), "1204\u202fkm"},
		{page.Money(-0.001, "EUR"), "0.00\u202fEUR"},
		{page.Money(math.NaN(), "EUR"), "–\u202fEUR"}, {page.Money(1234.5, "ISK"), "1234\u202fISK"}, {page.Money(3, "TND"), "3.000\u202fTND"},
		{Voice{Units: "american"}.Quantity(0, "L/100 km", 1), "– mpg"},
		{page.Quantity(-0.2, "L", 0), "0\u202fL"},
		{page.Short(999), "999\u202fm"},
		{page.Short(1500), "1.5\u202fkm"},
		{page.Clock(-5), "23:55"},
		{page.Clock(1439.6), "00:00"},
		{page.Span(59.6), "1\u202fh"},
		{page.ShortDate("2026-06-12"), "Fri 12"},
		{page.LongDate("2026-06-12"), "Friday, 12 June 2026"},
		{Capital("élan"), "Élan"},
		{Capital(""), ""},
	} {
		if tc.got != tc.want {
			t.Errorf("got %q, want %q", tc.got, tc.want)
		}
	}
}
