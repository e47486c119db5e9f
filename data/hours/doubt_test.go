package hours

import (
	"testing"
	"time"
)

// What has two readings, or speaks of days that there are not, is never open: it is right, unknown or refused.
// Worked by hand from the specification.
func TestNeverOpenByGuess(t *testing.T) {
	berlin := Where{Lat: 52.5, Lon: 13.0, Country: "DE-BE"}
	for _, c := range []struct {
		text, from string
		days       int
		want       string // "" is closed all the time, "refused"
	}{
		// West of Berlin the sun sets at 21:35 on the longest day, and at 15:56 on the shortest.
		{"sunset-21:00", "2024-06-21", 1, "?"},
		{"Fr sunset-21:00", "2024-06-22", 1, "?"}, // nor on the next morning
		{"(sunset+01:00)-21:00", "2024-12-21", 1, "0 16:56-21:00"},
		{"06:00-sunrise", "2024-12-21", 1, "0 06:00-08:17"},
		{"06:00-sunrise", "2024-06-21", 1, "?"},
		{"00:00-24:00; 06:00-sunrise off", "2024-06-21", 1, "0 04:45-06:00, ?"}, // closed until the next sunrise, or not at all
		{"sunset-02:00", "2024-06-22", 1, "0 00:00-02:00, 0 21:35-24:00"},

		{"sunset-16:30", "2024-06-21", 1, "?"},
		{"(sunset-03:00)-10:30", "2024-12-21", 1, "?"}, // from 12:56, for all but two hours of the day

		// Days that there are not.
		{"Feb 29 10:00-11:00", "2023-02-26", 7, ""},
		{"Feb 29 10:00-11:00", "2024-02-26", 7, "3 10:00-11:00"},
		{"Feb 28-29 10:00-11:00", "2023-02-26", 7, "2 10:00-11:00"},
		{"Feb 29-Mar 1 10:00-11:00", "2023-02-26", 7, "3 10:00-11:00"},
		{"Mar 3-Feb 29 10:00-11:00", "2023-02-27", 5, "0 10:00-11:00, 1 10:00-11:00, 4 10:00-11:00"},
		{"2023 Feb 29 10:00-11:00", "2023-02-26", 7, "refused"},
		{"Feb 29 +1 day 10:00-11:00", "2023-02-26", 7, "refused"},
		{"Feb Mo[5] 10:00-11:00", "2023-03-01", 14, ""},
		{"Jan Mo[5] 10:00-11:00", "2023-01-23", 14, "7 10:00-11:00"},
		{"Jan Mo[5]-Feb 10 10:00-11:00", "2023-01-23", 14, "refused"},
		{"Jan Mo[-5] 10:00-11:00", "2024-12-23", 14, ""}, // 30 December is no Monday of January

		// Which of the two comes first depends on the year.
		{"easter-Apr 20 10:00-11:00", "2025-04-14", 14, "refused"},
		{"Apr 10-easter 10:00-11:00", "2025-04-14", 14, "refused"},
		{"Apr Su[1]-Apr 3 10:00-11:00", "2025-04-01", 14, "refused"},
		{"2025 easter-2025 Apr 21 10:00-11:00", "2025-04-14", 14, "6 10:00-11:00, 7 10:00-11:00"},
		{"Oct 15-easter 10:00-11:00", "2025-04-18", 4, "0 10:00-11:00, 1 10:00-11:00, 2 10:00-11:00"},
		{"2023 Dec-May 10:00-11:00", "2024-03-01", 3, "refused"}, // months of 2023, or up to May of 2024
		{"week 40-30 10:00-11:00", "2025-01-06", 3, "refused"},

		// Both, or those on which both hold?
		{"Mo-We PH 10:00-11:00", "2025-04-18", 4, "refused"},
		{"Mo-We,PH 10:00-11:00", "2025-04-18", 4, "0 10:00-11:00, 3 10:00-11:00"},
		{"PH Mo-We 10:00-11:00", "2025-04-18", 4, "3 10:00-11:00"},
		{"PH,SH Mo-We 10:00-11:00", "2025-04-18", 4, "refused"},
		{"PH -1 day,Mo 10:00-11:00", "2025-04-18", 4, "refused"},
		{"Mo,PH -1 day 10:00-11:00", "2025-04-16", 4, "1 10:00-11:00"},
		{"24/7; PH +30 days off", "2025-05-21", 1, "refused"}, // whether a day so far away is one may not be known
		{"PH Mo,PH 10:00-11:00", "2025-04-18", 4, "refused"},

		// Lists of unlike things.
		{"Apr-Jun,Aug 10 10:00-11:00", "2025-04-18", 1, "refused"},
		{"Jan,Mar 15 10:00-11:00", "2025-01-18", 1, "refused"},
		{"Jan Feb 10-12 10:00-11:00", "2025-01-18", 1, "refused"},
		{"Apr 1-Jun 10,Aug 10 10:00-11:00", "2025-04-18", 1, "0 10:00-11:00"},
		{"2026 2024 Jul-Dec 10:00-11:00", "2024-07-18", 1, "refused"},
		{"2024 10:00-11:00 2025", "2025-04-18", 1, "refused"},
		{"Mo 10:00-11:00 Apr 14:00-15:00", "2025-04-14", 1, "refused"},
		{"10:00-11:00 Mo 14:00-15:00", "2025-04-14", 1, "refused"},
		{"10:00-11:00 Mo, 14:00-15:00", "2025-04-14", 1, "refused"},
		{"10:00-11:00 Mo", "2025-04-14", 2, "0 10:00-11:00"},

		{"May 11,Oct Th[-1] 10:00-11:00", "2024-05-11", 1, "refused"},
		{"Jun Sa[3] We-Su 10:00-11:00", "2024-06-15", 1, "refused"},
		{"Mar Su[-1]-Oct Su[-1] We-Su 10:00-11:00", "2024-06-15", 1, "0 10:00-11:00"},
		{"Mo 10:00-11:00 || Tu 10:00-11:00, We 14:00-15:00", "2025-04-16", 1, "refused"},

		// An end that is open reaches into what comes after it.
		{"08:00-12:30,05:30-06:00+", "2025-04-14", 1, "refused"},
		{"10:00-20:00,sunset+", "2025-04-14", 1, "refused"},
		{"Mo 22:00-06:00+; Tu 14:00-15:00, Tu 07:00-08:00", "2025-04-15", 1, "0 07:00-08:00, 0 14:00-15:00"},
		{"22:00-06:00+, Tu 12:00-15:00", "2025-04-15", 1, "0 00:00-06:00, 0 14:00-15:00, 0 22:00-24:00, ?"}, // perhaps until 14:00
		{"10:00-12:00+,14:00-18:00", "2025-04-14", 1, "refused"},
		{"08:00-12:00,14:00-18:00+", "2025-04-14", 1, "0 08:00-12:00, 0 14:00-18:00, ?"},
		{"24/7; 10:00+ off", "2025-04-14", 1, "refused"},
		{"(sunrise+01:00)-05:30+", "2025-04-14", 1, "refused"},
		{"Tu 23:59-48:00+", "2025-04-15", 4, "refused"},
		{"Mo 08:00-09:00 || 12:00-10:00+", "2025-04-16", 1, "refused"},
		{"14:30-19:00 || We-Su || 13:15-20:45+", "2023-02-26", 1, "refused"},
		{"Nov 06-Nov 05 We-Tu 08:00-19:00", "2023-02-26", 1, "refused"},
		{"Nov 06-Nov 04 08:00-19:00", "2023-02-26", 1, "0 08:00-19:00"},
		{"Mo dusk-06:30+", "2025-04-15", 1, "0 00:00-06:30, ?"},
		{"Mo 22:00-sunrise+", "2025-04-15", 1, "0 00:00-05:12, ?"},
		{"Tu 20:00-24:00+", "2025-04-15", 2, "0 20:00-24:00, ?"},
	} {
		got := "refused"
		if s, err := Parse(c.text); err == nil {
			from, err := time.ParseInLocation(time.DateOnly, c.from, time.FixedZone("", map[bool]int{true: 7200, false: 3600}[c.from[5:7] == "06"]))
			if err != nil {
				t.Fatal(err)
			}
			got = show(s.Windows(from, c.days, berlin))
		}
		if got != c.want {
			t.Errorf("%q from %s: %s, want %s", c.text, c.from, got, c.want)
		}
	}
}

// Far in the north the sun of a day may not set, or rise the evening before.
func TestNorthernSun(t *testing.T) {
	for _, c := range []struct {
		text string
		from time.Time
		at   Where
		want string
	}{
		{"Mo sunset-02:00", time.Date(2025, 1, 7, 0, 0, 0, 0, time.FixedZone("", 3600)), Where{Lat: 80, Lon: 20}, "?"}, // the night after Monday
		{"Fr sunrise-10:00", time.Date(2024, 6, 21, 0, 0, 0, 0, time.FixedZone("", 0)), Where{Lat: 65.5, Lon: 25}, "?"},
		{"12:00-sunset", time.Date(2024, 6, 21, 0, 0, 0, 0, time.FixedZone("", 3*3600)), Where{Lat: 65.5, Lon: 25}, "0 00:00-00:48, 0 12:00-24:00"},
	} {
		s, err := Parse(c.text)
		if err != nil {
			t.Fatal(err)
		}
		if got := show(s.Windows(c.from, 1, c.at)); got != c.want {
			t.Errorf("%q: %s, want %s", c.text, got, c.want)
		}
	}
}

// When clocks change, hours of the clock stay and those of the sun move: in Berlin by an hour on 31 March 2024.
func TestClocksChange(t *testing.T) {
	zone, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err) // the data of time zones come with Go
	}
	for text, want := range map[string]string{
		"Su 08:00-18:00":   "1 08:00-18:00",
		"Sa 22:00-06:00":   "0 22:00-30:00",
		"sunrise-20:00":    "0 05:46-20:00, 1 06:44-20:00",
		"Sa 20:00-sunrise": "0 20:00-30:46",
	} {
		s, err := Parse(text)
		if err != nil {
			t.Fatal(err)
		}
		from := time.Date(2024, 3, 30, 0, 0, 0, 0, zone)
		if got := show(s.Windows(from, 2, inBerlin)); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
}
