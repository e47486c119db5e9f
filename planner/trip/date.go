package trip

import (
	"math"
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

// Since is how many days a date is after another; below 0: before it.
func (d Date) Since(o Date) int { return int(math.Round(d.Time().Sub(o.Time()).Hours() / 24)) }

// A Moment is a local time of a day, written 2026-06-13T14:20. What comes from a
// person may have a space for the T, and seconds.
type Moment string

var momentLayouts = []string{"2006-01-02T15:04", "2006-01-02 15:04", "2006-01-02T15:04:05"}

// Since is how many minutes a moment is after the midnight that a date begins
// with; ok is false for a text that is no moment.
func (m Moment) Since(d Date) (minutes float64, ok bool) {
	for _, layout := range momentLayouts {
		if at, err := time.Parse(layout, string(m)); err == nil {
			return at.Sub(d.Time()).Minutes(), true
		}
	}
	return 0, false
}
