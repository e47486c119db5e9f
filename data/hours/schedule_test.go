package hours

import (
	"bufio"
	"compress/gzip"
	"fmt"
	"math"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"
)

// Monday, 6 January 2025.
var monday = time.Date(2025, 1, 6, 9, 30, 0, 0, time.FixedZone("", 3600))

// String names a state, for messages.
func (s State) String() string { return [...]string{"closed", "open", "unknown"}[s] }

// show writes windows as people do: "0 08:00-18:00" is the first day.
func show(windows [][2]float64, known bool) string {
	var out []string
	for _, w := range windows {
		day := int(w[0]) / dayMin
		out = append(out, fmt.Sprintf("%d %02d:%02d-%02d:%02d", day, int(w[0])/60-24*day, int(w[0])%60, int(w[1])/60-24*day, int(w[1])%60))
	}
	if !known {
		out = append(out, "?")
	}
	return strings.Join(out, ", ")
}

// Worked by hand from the specification,
// https://wiki.openstreetmap.org/wiki/Key:opening_hours/specification
func TestWindows(t *testing.T) {
	for _, tc := range []struct {
		text, country string
		days          int
		want          string
	}{
		{"24/7", "", 2, "0 00:00-48:00"},
		{"Mo-Fr 08:00-18:00", "", 7, "0 08:00-18:00, 1 08:00-18:00, 2 08:00-18:00, 3 08:00-18:00, 4 08:00-18:00"},
		{"Mo-Su 08:00-18:00; Tu off", "", 3, "0 08:00-18:00, 2 08:00-18:00"},
		{"08:00-18:00; Tu 10:00-12:00", "", 3, "0 08:00-18:00, 1 10:00-12:00, 2 08:00-18:00"},
		{"08:00-12:00, Tu 14:00-15:00", "", 2, "0 08:00-12:00, 1 08:00-12:00, 1 14:00-15:00"},
		{"08:00-18:00; Mo 12:00-13:00 off", "", 1, "0 08:00-12:00, 0 13:00-18:00"},
		{"Mo 22:00-02:00", "", 2, "0 22:00-26:00"},
		{"Mo 22:00-26:00", "", 2, "0 22:00-26:00"},
		{"Su 22:00-02:00", "", 1, "0 00:00-02:00"},
		{"Mo 22:00-02:00", "", 1, "0 22:00-24:00"},
		{"Mo 20:00-24:00, Tu 00:00-03:00", "", 2, "0 20:00-27:00"},
		{"Fr-Mo 10:00-11:00", "", 5, "0 10:00-11:00, 4 10:00-11:00"},
		{"Mo[1] 10:00-11:00", "", 14, "0 10:00-11:00"},
		{"Mo[1-3] 10:00-11:00", "", 28, "0 10:00-11:00, 7 10:00-11:00, 14 10:00-11:00"}, // not the first one only
		{"Mo[1,3] 10:00-11:00", "", 28, "0 10:00-11:00, 14 10:00-11:00"},
		{"Mo[-2--1] 10:00-11:00", "", 28, "14 10:00-11:00, 21 10:00-11:00"},
		{"Mo[-1] 10:00-11:00", "", 28, "21 10:00-11:00"},
		{"Mo[2] -1 day 10:00-11:00", "", 14, "6 10:00-11:00"},
		{"Jan 7-8 10:00-11:00", "", 7, "1 10:00-11:00, 2 10:00-11:00"},
		{"Dec 24-Jan 7 10:00-11:00", "", 7, "0 10:00-11:00, 1 10:00-11:00"},
		{"2024 Dec 24-2025 Jan 7 10:00-11:00", "", 7, "0 10:00-11:00, 1 10:00-11:00"},
		{"2026 Jan 10:00-11:00", "", 7, ""},
		{"2025+ Mo 10:00-11:00", "", 7, "0 10:00-11:00"},
		{"Jan 6,8,10-11 10:00-11:00", "", 7, "0 10:00-11:00, 2 10:00-11:00, 4 10:00-11:00, 5 10:00-11:00"},
		{"week 2 Mo 10:00-11:00", "", 14, "0 10:00-11:00"},
		{"week 1-53/2 Mo 10:00-11:00", "", 14, "7 10:00-11:00"},

		// Both ends of a range count, and nothing beyond them: Mondays are on 6, 13, 20, 27 January, 3 and 24 February, 3, 24 and 31 March, 7 April.
		{"2024-2025 Mo 10:00-11:00", "", 7, "0 10:00-11:00"},
		{"2025-2026 Mo 10:00-11:00", "", 7, "0 10:00-11:00"},
		{"2023-2024 Mo 10:00-11:00", "", 7, ""},
		{"2023-2029/2 Mo 10:00-11:00", "", 7, "0 10:00-11:00"},
		{"2024-2030/2 Mo 10:00-11:00", "", 7, ""},
		{"week 1-2 Mo 10:00-11:00", "", 14, "0 10:00-11:00"},
		{"week 3-4 Mo 10:00-11:00", "", 28, "7 10:00-11:00, 14 10:00-11:00"},
		{"week 3-10/2 Mo 10:00-11:00", "", 28, "7 10:00-11:00, 21 10:00-11:00"},
		{"Feb Mo 10:00-11:00", "", 63, "28 10:00-11:00, 35 10:00-11:00, 42 10:00-11:00, 49 10:00-11:00"},
		{"Feb-Mar Mo[1] 10:00-11:00", "", 105, "28 10:00-11:00, 56 10:00-11:00"},
		{"Nov-Jan Mo[4] 10:00-11:00", "", 63, "21 10:00-11:00"},
		{"Mar-Jan Mo[1] 10:00-11:00", "", 63, "0 10:00-11:00, 56 10:00-11:00"},
		{"Jan 6-12/3 10:00-11:00", "", 9, "0 10:00-11:00, 3 10:00-11:00, 6 10:00-11:00"},
		{"2024 Dec 24-Jan 7 10:00-11:00", "", 7, "0 10:00-11:00, 1 10:00-11:00"},
		{"2023 Dec 24-Jan 7 10:00-11:00", "", 7, ""},
		{"2025 Jan 7-8 10:00-11:00", "", 7, "1 10:00-11:00, 2 10:00-11:00"},
		// The first Monday of a month that has it on the 7th, the second on the 8th, the last on the last day, the one before 7 days earlier.
		{"Apr Mo[1] 10:00-11:00", "", 119, "91 10:00-11:00"},
		{"Sep Mo[2] 10:00-11:00", "", 260, "245 10:00-11:00"},
		{"Mar Mo[-1] 10:00-11:00", "", 119, "84 10:00-11:00"},
		{"Mar Mo[-2] 10:00-11:00", "", 119, "77 10:00-11:00"},
		{"Nov-Mar: Mo: 10:00-11:00", "", 7, "0 10:00-11:00"},
		{"Apr-Oct 10:00-11:00", "", 7, ""},
		{"Jan 24/7", "", 1, "0 00:00-24:00"},
		{"Mo-Fr, 10:00-11:00", "", 1, "0 10:00-11:00"},
		{"Mo-Fr 10:00-13:00; 11:00-12:00 off", "", 1, "0 10:00-11:00, 0 12:00-13:00"},
		{"Mo unknown; Tu 10:00-11:00", "", 2, "1 10:00-11:00, ?"},
		{`Mo 10:00-11:00 || "by appointment"`, "", 1, "0 10:00-11:00, ?"},
		{`Mo 10:00-11:00 "ring the bell"`, "", 1, "?"},
		{`Mo 10:00-11:00 open "ring the bell"`, "", 1, "0 10:00-11:00"},
		{"Mo 10:00-12:00 || Mo 11:00-13:00", "", 1, "0 10:00-13:00"},
		{"10:00+", "", 1, "?"},
		{"10:00-18:00+", "", 1, "0 10:00-18:00, ?"},
		{"off", "", 1, ""},
		{"closed", "", 1, ""},
		{"Tu off", "", 2, "?"},

		// Holidays: 6 January is one in Italy, in Germany in some regions.
		{"Mo-Tu 10:00-11:00; PH off", "IT", 2, "1 10:00-11:00"},
		{"Mo-Tu 10:00-11:00; PH off", "FR", 2, "0 10:00-11:00, 1 10:00-11:00"},
		{"Mo-Tu 10:00-11:00; PH off", "DE", 2, "1 10:00-11:00, ?"},
		{"Mo-Tu 10:00-11:00; PH off", "DE-BY", 2, "1 10:00-11:00"},
		{"Mo-Tu 10:00-11:00; PH off", "DE-BE", 2, "0 10:00-11:00, 1 10:00-11:00"},
		{"Mo-Tu 10:00-11:00; PH off", "", 2, "?"},
		{"Mo-Tu 10:00-11:00; PH 10:00-11:00", "", 3, "0 10:00-11:00, 1 10:00-11:00, ?"}, // Wednesday may be one
		{"PH +1 day 10:00-11:00", "IT", 3, "1 10:00-11:00"},
		{"Mo-Fr 10:00-11:00; SH off", "IT", 1, "?"},
		{"easter -2 days 10:00-11:00", "", 120, "102 10:00-11:00"}, // Good Friday is 18 April 2025

		// As people write.
		{"08:30-08:00", "", 1, "0 00:00-08:00, 0 08:30-24:00"},
		{"Mo 18:00-0:00", "", 1, "0 18:00-24:00"},
		{"Mo 6:30-01:00", "", 2, "0 06:30-25:00"},
		{"Mo 8h-3h", "", 2, "0 08:00-27:00"},
		{"Mo 7:30-11:00", "", 1, "0 07:30-11:00"},
		{"mo-fr 8:00 - 18:00", "", 1, "0 08:00-18:00"},
		{"Mon–Fri 8–18", "", 1, "0 08:00-18:00"},
		{"Monday 8am-6pm", "", 1, "0 08:00-18:00"},
		{"Mo 12:00am-12:30pm", "", 1, "0 00:00-12:30"},
		{"Mo 8h30-18h", "", 1, "0 08:30-18:00"},
		{"Mo 08.30-18.00;", "", 1, "0 08:30-18:00"},
		{"Mo,Tu, We 08:00-12:00 14:00-18:00", "", 1, "0 08:00-12:00, 0 14:00-18:00"},
	} {
		t.Run(tc.text, func(t *testing.T) {
			s, err := Parse(tc.text)
			if err != nil {
				t.Fatal(err)
			}
			if got := show(s.Windows(monday, tc.days, Where{Country: tc.country})); got != tc.want {
				t.Errorf("Windows(%q) = %s, want %s", tc.text, got, tc.want)
			}
		})
	}
}

func TestParseRefuses(t *testing.T) {
	for _, text := range []string{
		"", " ", ";", "Mo 10:00", "Mo 10:00-", "Mo-", "25:00-26:00", "10:60-11:00", "Mo 10:00-49:00",
		"maybe", "24/7 automatic", "Mo Tu Feb We", "Feb 30 10:00-11:00", "week 54", "week 51-2", "week 4-1", "Mo[6] 10:00-11:00", "Mo[1",
		`Mo "open`, "10:00-18:00/30", "Mo 9am-18", "Mo 13pm-14pm", "|| Mo", "2025-2020", "sunrise+1:00-18:00", "Jan-Feb 15",
		"Montag 10:00-12:00", "(sunrise", "08:00-12:00 foo", "9-5", "9:30-8:00", "Mo 1:00-5:00", "7-30 14-00", "10-00 19-00", "Mo 8:00-5:00",
		"Apr-Sep, Mo-Fr 10:00-18:00", "week 1-10, Mo 10:00-18:00",
		"Mo-Fr; 10:00-18:00", "Tu 09:00-12:00; 13:00-18:30", "Su off; 10:00-18:00", "Mo-Fr 10:00-12:00; 24/7",
		strings.Repeat("Mo;", 1000),
	} {
		if s, err := Parse(text); err == nil {
			t.Errorf("Parse(%q) = %+v, want an error", text, s)
		} else if !strings.HasPrefix(err.Error(), "opening hours") {
			t.Errorf("Parse(%q) = %v", text, err)
		}
	}
}

func TestNothingKnown(t *testing.T) {
	var s *Schedule
	if w, known := s.Windows(monday, 3, Where{}); w != nil || known {
		t.Errorf("Windows of nothing = %v, %v", w, known)
	}
}

// The sun: where its time is not known, only what is open in any case.
func TestSun(t *testing.T) {
	s, err := Parse("sunrise-sunset")
	if err != nil {
		t.Fatal(err)
	}
	// Munich, 6 January 2025: 8:03 and 16:36 (US Naval Observatory's method, by
	// hand with the almanac's formulas; published tables say 8:04 and 16:36).
	munich := Where{Lat: 48.14, Lon: 11.58}
	w, known := s.Windows(monday, 1, munich)
	if len(w) != 1 || !known || w[0][0] < 8*60+1 || w[0][0] > 8*60+6 || w[0][1] < 16*60+34 || w[0][1] > 16*60+39 {
		t.Errorf("with a zone: %s", show(w, known))
	}
	// One hour behind the sun's zone to three ahead.
	u, known := s.Windows(monday.UTC(), 1, munich)
	if len(u) != 1 || known || u[0][0] != w[0][0]+3*60-0 || u[0][1] != w[0][1]-60 {
		t.Errorf("without: %s, with: %v", show(u, known), w)
	}
	if w, known := s.Windows(monday, 1, Where{Lat: 80, Lon: 20}); len(w) > 0 || known {
		t.Errorf("in the polar night: %s", show(w, known))
	}
	if w, known := s.Windows(monday, 1, Where{}); len(w) > 0 || known {
		t.Errorf("nowhere: %s", show(w, known))
	}
}

// Towns, by their coordinates as everybody's atlas has them.
func TestCountriesAt(t *testing.T) {
	for _, tc := range []struct {
		town     string
		lat, lon float64
		want     string
	}{
		{"Andorra la Vella", 42.507, 1.522, "AD"},
		{"Berlin", 52.52, 13.40, "DE"},
		{"Madrid", 40.417, -3.703, "ES"},
		{"Las Palmas", 28.12, -15.43, "ES"},
		{"Vaduz, by the Rhine", 47.141, 9.521, "CH LI"},
		{"San Marino", 43.936, 12.447, "IT SM"},
		{"Ajaccio", 41.919, 8.738, "FR"},
		{"Bolzano", 46.498, 11.354, "IT"},
		{"Campione, an enclave too small to draw", 45.97, 8.97, "CH IT"},
		{"Helsinki, on the coast", 60.17, 24.94, "FI"},
		{"Belfast", 54.597, -5.93, "GB"},
		{"Wellington", -41.288, 174.777, "NZ"},
		{"Kiel Canal", 54.36, 10.0, "DE"},
		{"Tromsø", 69.65, 18.96, "NO"},
		{"Belgrade, not in the table", 44.81, 20.46, ""},
		{"the Atlantic", 45, -20, ""},
		{"nowhere", math.NaN(), 0, ""},
	} {
		if got := strings.Join(CountriesAt(tc.lat, tc.lon), " "); got != tc.want {
			t.Errorf("%s: CountriesAt = %q, want %q", tc.town, got, tc.want)
		}
	}
	for _, b := range borders() {
		if calendars[b.country] == nil {
			t.Errorf("a border but no holidays: give %s a line in holidays.go", b.country)
		}
	}
	for country := range calendars {
		if !slices.ContainsFunc(borders(), func(b border) bool { return b.country == country }) {
			t.Errorf("holidays but no border: add %s to CODES in borders.py and write borders.bin anew", country)
		}
	}

	// 8 September is a holiday in Andorra, not in all of France.
	s, err := Parse("08:00-18:00; PH off")
	if err != nil {
		t.Fatal(err)
	}
	from := time.Date(2025, 9, 8, 0, 0, 0, 0, time.UTC)
	for at, want := range map[Where]string{
		{Lat: 42.507, Lon: 1.522}: "1 08:00-18:00",
		{Lat: 48.85, Lon: 2.35}:   "0 08:00-18:00, 1 08:00-18:00",
		{Lat: 44.81, Lon: 20.46}:  "?",
	} {
		if got := show(s.Windows(from, 2, at)); got != want {
			t.Errorf("Windows at %v = %s, want %s", at, got, want)
		}
	}
}

// Easter Sundays as the US Naval Observatory publishes them.
func TestEaster(t *testing.T) {
	for _, d := range [][3]int{{2024, 3, 31}, {2025, 4, 20}, {2026, 4, 5}, {2027, 3, 28}, {2028, 4, 16}, {2029, 4, 1}, {2030, 4, 21}, {2038, 4, 25}} {
		if got := easter(d[0]); got != dayNumber(d[0], d[1], d[2]) {
			t.Errorf("easter(%d) = %+v, want %v", d[0], dateOf(got), d)
		}
	}
	for _, d := range [][3]int{{2024, 5, 5}, {2025, 4, 20}, {2026, 4, 12}, {2027, 5, 2}, {2028, 4, 16}} {
		if got := orthodoxEaster(d[0]); got != dayNumber(d[0], d[1], d[2]) {
			t.Errorf("orthodoxEaster(%d) = %+v, want %v", d[0], dateOf(got), d)
		}
	}
}

// The calendar against package time, over 400 years.
func TestCalendar(t *testing.T) {
	for n := -100 * 365; n < 300*365; n += 13 {
		at := time.Unix(int64(n)*86400, 0).UTC()
		want := date{n, at.Year(), int(at.Month()), at.Day(), int(at.Weekday())}
		_, week := at.ISOWeek()
		if got := dateOf(n); got != want || got.isoWeek() != week || dayNumber(got.year, got.month, got.day) != n {
			t.Fatalf("dateOf(%d) = %+v, week %d, want %+v, week %d", n, got, got.isoWeek(), want, week)
		}
	}
}

// 13,924 real values that no evaluator could read when they were collected:
// none crashes; and what can be read now gives periods in order.
func TestBrokenValues(t *testing.T) {
	f, err := os.Open(shared + "/unparsable-real-values.txt.gz")
	if err != nil {
		t.Skipf("open data are not beside the project, as ../shared/data: %v", err)
	}
	defer f.Close()
	zip, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	values, read := 0, 0
	for scan := bufio.NewScanner(zip); scan.Scan(); values++ {
		if s, err := Parse(scan.Text()); err == nil {
			read++
			checkPeriods(t, s)
		}
	}
	t.Logf("%d values, %d of them read", values, read)
	if values != 13924 || read > values/4 {
		t.Errorf("%d values, %d read", values, read)
	}
}

func checkPeriods(t *testing.T, s *Schedule) {
	at := 0
	for i, p := range s.Periods(monday, 9, Where{48, 11, "DE"}) {
		if p.From != at || p.To <= p.From || p.State < Closed || p.State > Unknown {
			t.Fatalf("period %d is %+v, want it to start at %d", i, p, at)
		}
		at = p.To
	}
	if at != 9*dayMin {
		t.Fatalf("periods end at %d", at)
	}
}

func FuzzParse(f *testing.F) {
	for _, text := range []string{
		"Mo-Fr 08:00-12:00,13:00-18:00; PH,Su off", "24/7", "Dec 24-26,31 (sunrise-01:00)-sunset+ || \"call\"",
		"sunset-21:00, Fr dusk-06:30+", "Feb 29,Mar 3 10:00-12:00+,14:00-18:00 || easter -2 days-Oct off",
		"week 1-53/2 Mo[1,-1] +2 days 22:00-26:00", "2025 Mar Su[-1]-Oct Su[-1] PH -1 day open \"x\", easter off", "8am-6:30 pm",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := Parse(text)
		if err != nil {
			return
		}
		checkPeriods(t, s)
		if again, err := Parse(text); err != nil || !reflect.DeepEqual(s, again) {
			t.Fatalf("read again: %v, %v", again, err)
		}
		// What closes at the end closes all.
		if shut, err := Parse(text + "; off"); err == nil {
			if w, known := shut.Windows(monday, 3, Where{48, 11, "DE"}); len(w) > 0 {
				t.Fatalf("%q is open: %v, %v", text+"; off", w, known)
			}
		}
	})
}

func BenchmarkWindows(b *testing.B) {
	for _, text := range []string{"24/7", "Mo-Fr 08:00-12:00,14:00-18:00; Sa 08:00-12:00; PH off", "Apr-Oct: Mo-Su 08:00-20:00; Nov-Mar: Mo-Sa 09:00-17:00; Dec 25 off", "sunrise-sunset"} {
		s, err := Parse(text)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				s.Windows(monday, 21, Where{42.5, 1.5, "AD"})
			}
		})
	}
}

// The country is found from the position.
func BenchmarkWindowsOfSomewhere(b *testing.B) {
	s, err := Parse("Mo-Fr 08:00-12:00,14:00-18:00; Sa 08:00-12:00; PH off")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		s.Windows(monday, 21, Where{Lat: 42.5, Lon: 1.5})
	}
}

func BenchmarkParse(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Parse("Mo-Fr 08:00-12:00,14:00-18:00; Sa 08:00-12:00; PH off"); err != nil {
			b.Fatal(err)
		}
	}
}
