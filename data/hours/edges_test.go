package hours

import (
	"strings"
	"testing"
	"time"
)

// These tests stand at edges: what begins at a minute, a year, a degree or a
// month's first day begins there and not beside it.

func day(text string) time.Time {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		panic(err)
	}
	return t
}

// What has no end closes at midnight, from 17:00 on after ten hours, from 22:00
// on after eight.
func TestOpenEndAtItsEdges(t *testing.T) {
	for _, c := range []struct{ from, to int }{{16*60 + 59, dayMin}, {17 * 60, 27 * 60}, {21*60 + 59, 31*60 + 59}, {22 * 60, 30 * 60}} {
		if got := openEnd(moment{min: c.from}); got.to.min != c.to || !got.openEnd {
			t.Errorf("open from minute %d ends at %d, want %d", c.from, got.to.min, c.to)
		}
	}
}

func TestTextAtItsEdges(t *testing.T) {
	for _, c := range []struct {
		text, from string
		days       int
		want       string // "" is refused
	}{
		{"Mo 1:00am-2:00am", "2025-01-06", 1, "0 01:00-02:00"},
		{"Mo 0:59am-2:00am", "2025-01-06", 1, ""},
		{"Mo 12:59pm-2:00pm", "2025-01-06", 1, "0 12:59-14:00"},
		{"1900 Jan 1 10:00-11:00", "1900-01-01", 1, "0 10:00-11:00"},
		{"1899 Jan 1 10:00-11:00", "2025-01-06", 1, ""},
		{": 10:00-11:00", "2025-01-06", 1, ""},
		{"Mo: 10:00-11:00", "2025-01-06", 1, "0 10:00-11:00"},
		{"Jan Mo[2] +1 day 10:00-11:00", "2025-01-06", 14, "8 10:00-11:00"},
		{"Mo[1] 10:00-11:00", "2025-09-01", 14, "0 10:00-11:00"},                 // the month begins on a Monday
		{"week 2, 10:00-12:00", "2025-01-05", 3, "1 10:00-12:00, 2 10:00-12:00"}, // the clock is no other week
		{"Mo (sunrise+01:00)-18:00", "2025-01-06", 1, "?"},                       // no position: not known
	} {
		s, err := Parse(c.text)
		switch {
		case (err != nil) != (c.want == ""):
			t.Errorf("Parse(%q): %v, want %q", c.text, err, c.want)
		case err == nil:
			if got := show(s.Windows(day(c.from), c.days, Where{})); got != c.want {
				t.Errorf("Windows(%q) = %s, want %s", c.text, got, c.want)
			}
		}
	}
}

// On the equator and on the meridian of Greenwich the sun rises as elsewhere.
func TestSunOnTheLines(t *testing.T) {
	s, err := Parse("sunrise-sunset")
	if err != nil {
		t.Fatal(err)
	}
	for _, at := range []Where{{Lat: 0, Lon: 32.5}, {Lat: 51.5, Lon: 0}} {
		if w, known := s.Windows(monday, 1, at); len(w) != 1 || !known {
			t.Errorf("at %v: %v, %v", at, w, known)
		}
	}
}

// New Year's Day of 2022 was a Saturday: in Britain the Monday was free in its
// place, the Sunday in between is none, and the Tuesday was an ordinary day in
// England. The Dutch keep the King's Day on the Saturday if it falls on a Sunday.
func TestHolidaysThatMove(t *testing.T) {
	s, err := Parse("08:00-18:00; PH off")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		country, from string
		days          int
		want          string
	}{
		{"GB-ENG", "2022-01-02", 3, "0 08:00-18:00, 2 08:00-18:00"},
		{"NL", "2025-04-25", 3, "0 08:00-18:00, 2 08:00-18:00"},
	} {
		if got := show(s.Windows(day(c.from), c.days, Where{Country: c.country})); got != c.want {
			t.Errorf("%s from %s: %s, want %s", c.country, c.from, got, c.want)
		}
	}
}

// Every day of the years around the turn of a cycle of 400, by Go's own calendar.
func TestDatesAroundTheCycle(t *testing.T) {
	for d := day("1999-12-30"); d.Year() < 2001; d = d.AddDate(0, 0, 1) {
		n := dayNumber(d.Year(), int(d.Month()), d.Day())
		if got := dateOf(n); got.year != d.Year() || got.month != int(d.Month()) || got.day != d.Day() {
			t.Errorf("day %d is %d-%d-%d, want %s", n, got.year, got.month, got.day, d.Format(time.DateOnly))
		}
	}
}

func TestClip(t *testing.T) {
	twenty := strings.Repeat("ä", 20)
	if clip(twenty) != twenty || clip(twenty+"b") != twenty+"…" {
		t.Errorf("%q, %q", clip(twenty), clip(twenty+"b"))
	}
}
