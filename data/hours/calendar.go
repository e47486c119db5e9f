package hours

import "time"

// This file holds the calendar: days counted from 1 January 1970, and Easter.

type date struct {
	n                int // days since 1970-01-01
	year, month, day int
	weekday          int // 0 is Sunday
}

// dayNumber returns the days since 1970-01-01 of a date of the Gregorian
// calendar; month 13 is January of the next year. Howard Hinnant,
// "chrono-Compatible Low-Level Date Algorithms", 2013, days_from_civil.
func dayNumber(year, month, day int) int {
	if month > 12 {
		year, month = year+1, month-12
	}
	if month <= 2 {
		year--
	}
	era := floorDiv(year, 400)
	yoe := year - era*400
	doy := (153*((month+9)%12)+2)/5 + day - 1
	doe := yoe*365 + yoe/4 - yoe/100 + doy
	return era*146097 + doe - 719468
}

// dateOf is the inverse of dayNumber (civil_from_days, ibid.).
func dateOf(n int) date {
	z := n + 719468
	era := floorDiv(z, 146097)
	doe := z - era*146097
	yoe := (doe - doe/1460 + doe/36524 - doe/146096) / 365
	doy := doe - (365*yoe + yoe/4 - yoe/100)
	mp := (5*doy + 2) / 153
	d := date{n: n, year: yoe + era*400, month: (mp+2)%12 + 1, day: doy - (153*mp+2)/5 + 1}
	if d.month <= 2 {
		d.year++
	}
	d.weekday = ((n+4)%7 + 7) % 7 // 1970-01-01 was a Thursday
	return d
}

func floorDiv(a, b int) int {
	if a < 0 {
		return -((b - 1 - a) / b)
	}
	return a / b
}

func daysIn(year, month int) int { return dayNumber(year, month+1, 1) - dayNumber(year, month, 1) }

// isoWeek returns the week of ISO 8601: that of the Thursday.
func (d date) isoWeek() int {
	thursday := d.n - (d.weekday+6)%7 + 3
	return (thursday-dayNumber(dateOf(thursday).year, 1, 1))/7 + 1
}

// nthWeekday returns the day of the n-th weekday of a month, from the end if
// nth is negative. It may lie in the next month.
func nthWeekday(year, month, weekday, nth int) int {
	if nth > 0 {
		first := dateOf(dayNumber(year, month, 1))
		return first.n + (weekday-first.weekday+7)%7 + 7*(nth-1)
	}
	last := dateOf(dayNumber(year, month+1, 1) - 1)
	return last.n - (last.weekday-weekday+7)%7 + 7*(nth+1)
}

// easter returns Easter Sunday (anonymous Gregorian algorithm, in J. Meeus,
// "Astronomical Algorithms", 1991, chapter 8).
func easter(year int) int {
	a, b, c := year%19, year/100, year%100
	d, e := b/4, b%4
	g := (8*b + 13) / 25
	h := (19*a + b - d - g + 15) % 30
	i, k := c/4, c%4
	l := (32 + 2*e + 2*i - h - k) % 7
	m := (a + 11*h + 19*l) / 433
	month := (h + l - 7*m + 90) / 25
	return dayNumber(year, month, (h+l-7*m+33*month+19)%32)
}

// orthodoxEaster returns Easter Sunday of the Julian calendar, as a date of
// the Gregorian (Meeus, ibid.; 13 days apart from 1900 to 2099).
func orthodoxEaster(year int) int {
	a, b, c := year%4, year%7, year%19
	d := (19*c + 15) % 30
	e := (2*a + 4*b - d + 34) % 7
	month, day := (d+e+114)/31, (d+e+114)%31+1
	return dayNumber(year, month, day) + 13
}

func dayOf(t time.Time) int {
	y, m, d := t.Date()
	return dayNumber(y, int(m), d)
}
