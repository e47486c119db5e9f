package hours

// This file holds what a text is made of.

// How a rule joins the ones before it.
type joint int8

const (
	normal     joint = iota // ";": replaces them on the days it speaks of
	additional              // ",": adds to them
	fallback                // "||": where they are closed
)

// A rule speaks of the days that match all kinds of selectors that it has.
type rule struct {
	joint  joint
	years  []yearRange
	dates  []dateRange
	weeks  []weekRange
	days   []daySelector
	times  []timeRange // none: the whole day
	state  State
	stated bool // the state is named
	always bool // "24/7"
	late   bool // the times stand before the days
}

// dated says whether the rule speaks of some days only.
func (r *rule) dated() bool {
	return r.years != nil || r.dates != nil || r.weeks != nil || r.days != nil
}

// Steps are 1 if not stated.
type yearRange struct{ from, to, step int }
type weekRange struct{ from, to, step int }

// A dateRange repeats every year unless its ends name years.
type dateRange struct {
	from, to dateEnd
	step     int
}

// A dateEnd is a month (day 0), a day of a month, the n-th weekday of a month
// or Easter, moved by an offset.
type dateEnd struct {
	year    int // 0: any
	month   int // 1 to 12
	day     int
	easter  bool
	nth     int // with weekday, if not 0
	weekday int
	offset  int // days
}

// maxHolidayOffset bounds "PH +1 day": more is not read.
const maxHolidayOffset = 7

// A daySelector matches a holiday, weekdays, or weekdays that are holidays.
type daySelector struct {
	holiday  holidayKind
	offset   int // days after the holiday
	weekdays []weekdayRange
}

type holidayKind int8

const (
	noHoliday holidayKind = iota
	publicHoliday
	schoolHoliday
)

// A weekdayRange is [from, to], 0 is Sunday; with nth, some of the month only.
type weekdayRange struct {
	from, to int
	nth      [][2]int // ranges of 1 to 5 or -5 to -1
	offset   int      // days after the n-th
}

// A timeRange is in minutes since 00:00; to may lie up to two days later.
type timeRange struct {
	from, to moment
	openEnd  bool // unknown, since somebody guessed the end
}

// A moment is a time of the clock or, with an event, minutes after it.
type moment struct {
	event sunEvent
	min   int
}

// first is the number of the first day of the end in a year.
func (e dateEnd) first(year int) int {
	switch {
	case e.easter:
		return easter(year) + e.offset
	case e.nth != 0:
		return nthWeekday(year, e.month, e.weekday, e.nth) + e.offset
	case e.day == 0:
		return dayNumber(year, e.month, 1) + e.offset
	}
	return dayNumber(year, e.month, e.day) + e.offset
}

// last is the number of its last day: of a month, the last. Of 29 February in
// other years first is 1 March and last is 28 February: no range is longer for it.
func (e dateEnd) last(year int) int {
	switch {
	case e.easter || e.nth != 0:
		return e.first(year)
	case e.day != 0:
		return dayNumber(year, e.month, min(e.day, daysIn(year, e.month))) + e.offset
	}
	return dayNumber(year, e.month+1, 1) - 1
}

// exists says whether a year has such a day: 29 February, a fifth Monday.
func (e dateEnd) exists(year int) bool {
	switch {
	case e.easter:
		return true
	case e.nth != 0:
		return dateOf(nthWeekday(year, e.month, e.weekday, e.nth)).month == e.month
	}
	return e.day <= daysIn(year, e.month)
}

// wholeMonth says whether it is all of a month.
func (e dateEnd) wholeMonth() bool { return e.day == 0 && e.nth == 0 && !e.easter }

// movable says whether it lies on another day in each year.
func (e dateEnd) movable() bool { return e.easter || e.nth != 0 }

// wraps says whether a range that begins in a year ends in the next.
func (r *dateRange) wraps(year int) bool { return r.to.last(year) < r.from.first(year) }
