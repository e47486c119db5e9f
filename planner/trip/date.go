package trip

import (
	"time"

	"ullage/planner/fact"
)

// dateLayout is how dates are written.
const dateLayout = "2006-01-02"

// A Date is a local day, written 2026-06-12. What comes from a file or a person
// is made one by [ParseDate], or found wrong by [Trip.Validate].
type Date string

// ParseDate reads a date; ok is false for any other text.
func ParseDate(text string) (d Date, ok bool) {
	_, err := time.Parse(dateLayout, text)
	return Date(text), err == nil
}

// DateOf is the day of a time.
func DateOf(t time.Time) Date { return Date(t.Format(dateLayout)) }

// Time is the midnight that a date begins with, as if it were in UTC; the zero time of no date.
func (d Date) Time() time.Time {
	t, _ := time.Parse(dateLayout, string(d))
	return t
}

// Says is a date as a value of a fact.
func (d Date) Says() fact.Value { return fact.Date(string(d)) }

// Plus is so many days later.
func (d Date) Plus(days int) Date { return DateOf(d.Time().AddDate(0, 0, days)) }
