package say

import (
	"fmt"
	"math"
	"time"
)

// dateLayout is how dates are stored.
const dateLayout = "2006-01-02"

// Clock is a time of day, of minutes since 00:00 of any day: "09:05".
func (v Voice) Clock(min float64) string {
	m := int(math.Mod(math.Round(min), 1440))
	if m < 0 {
		m += 1440
	}
	return fmt.Sprintf("%02d:%02d", m/60, m%60)
}

// Span is a length of time: "45 min", "3 h", "3 h 20 min".
func (v Voice) Span(min float64) string {
	m := int(math.Round(min))
	switch {
	case m < 60:
		return v.Count(float64(m)) + v.gap() + "min"
	case m%60 == 0:
		return v.Count(float64(m/60)) + v.gap() + "h"
	}
	return fmt.Sprintf("%d%sh %d%smin", m/60, v.gap(), m%60, v.gap())
}

// Date is a local date with its weekday: "Friday 12 June". What is no date is
// shown as it is.
func (v Voice) Date(iso string) string { return v.date(iso, "date.full") }

// ShortDate is a date for narrow places: "Fri 12".
func (v Voice) ShortDate(iso string) string { return v.date(iso, "date.short") }

// LongDate is a date with its year: "Friday, 12 June 2026".
func (v Voice) LongDate(iso string) string { return v.date(iso, "date.long") }

func (v Voice) date(iso, key string) string {
	t, err := time.Parse(dateLayout, iso)
	if err != nil {
		return iso
	}
	return v.word(key,
		"weekday", v.word(fmt.Sprintf("weekday.%d", t.Weekday())), "wd", v.word(fmt.Sprintf("wd.%d", t.Weekday())),
		"day", v.Count(float64(t.Day())), "month", v.word(fmt.Sprintf("month.%d", t.Month())), "year", fmt.Sprint(t.Year()))
}
