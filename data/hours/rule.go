package hours

// This file holds what a text is made of, and whether a rule speaks of a day.

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
	always bool // "24/7"
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

func (r *rule) matches(e *evaluator, d date) bool {
	return matchYears(r.years, d) && matchDates(r.dates, d) && matchWeeks(r.weeks, d) && matchDays(r.days, e, d)
}

func matchYears(years []yearRange, d date) bool {
	for _, y := range years {
		if d.year >= y.from && d.year <= y.to && (d.year-y.from)%y.step == 0 {
			return true
		}
	}
	return years == nil
}

func matchWeeks(weeks []weekRange, d date) bool {
	if weeks == nil {
		return true
	}
	week := d.isoWeek()
	for _, w := range weeks {
		if w.from <= w.to && week >= w.from && week <= w.to && (week-w.from)%w.step == 0 {
			return true
		}
		if w.from > w.to && (week >= w.from || week <= w.to) {
			return true
		}
	}
	return false
}

func matchDates(dates []dateRange, d date) bool {
	for i := range dates {
		if dates[i].matches(d) {
			return true
		}
	}
	return dates == nil
}

func (r *dateRange) matches(d date) bool {
	if from, to := r.from.month, r.to.month; r.step == 1 && r.from == (dateEnd{month: from}) && r.to == (dateEnd{month: to}) {
		if from <= to { // the usual: months
			return d.month >= from && d.month <= to
		}
		return d.month >= from || d.month <= to
	}
	if r.from.year != 0 {
		to := r.to.year
		if to == 0 {
			to = r.from.year
		}
		return r.within(d, r.from.year, to)
	}
	// A range without years may have begun last year.
	return r.within(d, d.year, d.year) || r.within(d, d.year-1, d.year-1) && r.wraps(d.year-1)
}

// wraps says whether the end that begins in a year lies in the next.
func (r *dateRange) wraps(year int) bool { return r.to.last(year) < r.from.first(year) }

func (r *dateRange) within(d date, fromYear, toYear int) bool {
	first, last := r.from.first(fromYear), r.to.last(toYear)
	if last < first && r.to.year == 0 {
		last = r.to.last(toYear + 1)
	}
	return d.n >= first && d.n <= last && (d.n-first)%r.step == 0
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

// last is the number of its last day: of a month, the last.
func (e dateEnd) last(year int) int {
	if e.easter || e.nth != 0 || e.day != 0 {
		return e.first(year)
	}
	return dayNumber(year, e.month+1, 1) - 1 + e.offset
}

func matchDays(days []daySelector, e *evaluator, d date) bool {
	for i := range days {
		s := &days[i]
		if s.holiday != noHoliday && !e.isHoliday(s.holiday, d.n-s.offset) {
			continue
		}
		if s.weekdays == nil {
			return true
		}
		for j := range s.weekdays {
			if s.weekdays[j].matches(d) {
				return true
			}
		}
	}
	return days == nil
}

func (w *weekdayRange) matches(d date) bool {
	if w.nth != nil {
		if w.offset != 0 {
			d = dateOf(d.n - w.offset)
		}
		if d.weekday != w.from {
			return false
		}
		ahead := (d.day + 6) / 7
		back := -((daysIn(d.year, d.month)-d.day)/7 + 1)
		for _, n := range w.nth {
			if ahead >= n[0] && ahead <= n[1] || back >= n[0] && back <= n[1] {
				return true
			}
		}
		return false
	}
	if w.from <= w.to {
		return d.weekday >= w.from && d.weekday <= w.to
	}
	return d.weekday >= w.from || d.weekday <= w.to
}
