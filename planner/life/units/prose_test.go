package units

import "testing"

// 100 km are 62.1 miles, 10 L are 2.64 US gallons, 40 °C are 104 °F, 100 kg are
// 220.5 lb, 2.6 m are 8.53 ft, 8 and 11 L/100 km are 29.4 and 21.4 US and 35.3 and
// 25.7 imperial miles per gallon (NIST Special Publication 811, appendix B); 1.60 a
// litre is 6.06 a US gallon.
func TestProse(t *testing.T) {
	for _, c := range []struct{ text, british, american string }{
		{"12:07 km 100 A: 10 L left, 8.0 km on (20 L), 3 Ah", "12:07 mile 62 A: 10 L left, 5.0 mi on (20 L), 3 Ah", "12:07 mile 62 A: 2.6 gal (US) left, 5.0 mi on (5.3 gal (US)), 3 Ah"},
		{"van 8–11 L/100 km", "van 35.3–25.7 mpg (imp)", "van 29.4–21.4 mpg (US)"},
		{"at most 80 km/h on 100 km", "at most 50 mph on 62 mi", "at most 50 mph on 62 mi"},
		{"warm at 20 to 45 °C, not below −15 °C", "warm at 20 to 45 °C, not below −15 °C", "warm at 68 to 113 °F, not below 5 °F"},
		{"too heavy by 100 kg", "too heavy by 100 kg", "too heavy by 220 lb"},
		{"too low: 2.60 m (maxheight=2.6 m)", "too low: 2.60 m (maxheight=2.6 m)", "too low: 8.53 ft (maxheight=2.6 m)"},
		{"counted as 1.60 EUR/L", "counted as 1.60 EUR/L", "counted as 6.06 EUR/gal (US)"},
		{"from km 3.2 to km 10.0: 75 min, 4 h, 10 A", "from mile 2.0 to mile 6.2: 75 min, 4 h, 10 A", "from mile 2.0 to mile 6.2: 75 min, 4 h, 10 A"},
		{"n12 m, w3 km", "n12 m, w3 km", "n12 m, w3 km"},
	} {
		for _, as := range []struct {
			s    System
			want string
		}{{Metric(), c.text}, {British(), c.british}, {American(), c.american}} {
			if got := as.s.Prose(c.text); got != as.want {
				t.Errorf("Prose(%q) = %q, want %q", c.text, got, as.want)
			}
		}
	}
}
