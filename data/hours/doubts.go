package hours

import (
	"errors"
	"slices"
)

// This file refuses dates that are read in two ways.

// datesAlike refuses a list in which one kind of date may narrow the other: "Apr-Jun,Aug 10", "2026 2024 Jul".
func (r *rule) datesAlike() error {
	first, last := r.dates[0].from, r.dates[len(r.dates)-1].from
	switch {
	case first.wholeMonth() != last.wholeMonth(), (first.year == 0) != (last.year == 0):
		return errors.New("a list of dates of more than one kind: days and months, with and without a year")
	case r.years != nil && last.year != 0:
		return errors.New("years are named twice in one rule")
	}
	return nil
}

// besideFallback says whether a rule and those before it have both a time without an end and a fallback that
// opens: whether the place is closed then, for the fallback to open it, nobody knows.
func (r *rule) besideFallback(before []rule) bool {
	opens := func(r rule) bool { return r.joint == fallback && r.state == Open }
	all := append(before[:len(before):len(before)], *r)
	return slices.ContainsFunc(all, opens) && slices.ContainsFunc(all, func(r rule) bool { return r.unended() })
}

func (e dateEnd) oneReading() error {
	if e.offset != 0 && (e.wholeMonth() || e.month == 2 && e.day == 29) {
		return errors.New("days before or after a month or 29 February: counted from where?")
	}
	return nil
}

// oneReading refuses a range whose ends do not belong together.
func (r *dateRange) oneReading() error {
	from, to := r.from, r.to
	switch {
	case from == to:
		return nil
	case from.year == 0 && to.year != 0:
		return errors.New("a range of dates names only the year of its end")
	case from.wholeMonth() && !to.wholeMonth() && !to.easter:
		return errors.New("a range of dates starts with a month and ends with a day")
	case r.allRound():
		return errors.New("a range of dates goes all round the year: is that meant?")
	case from.fifth() || to.fifth():
		return errors.New("not each month has five such weekdays, and a range begins and ends in each year")
	case from.year != 0:
		return r.yearOfEnd()
	case from.movable() || to.movable():
		return r.sameOrder()
	}
	return nil
}

// yearOfEnd refuses a range from a year that ends before it starts, or in a
// year that it does not name, but for "2024 Dec 24-Jan 7".
func (r *dateRange) yearOfEnd() error {
	switch {
	case r.to.year != 0 && r.to.last(r.to.year) < r.from.first(r.from.year):
		return errors.New("a range of dates ends before it starts")
	case r.to.year == 0 && r.wraps(r.from.year) && (r.from.wholeMonth() || r.from.movable() || r.to.movable()):
		return errors.New("a range of dates ends in another year: in which?")
	}
	return nil
}

// sameOrder refuses a range whose ends are in another order in another year:
// "easter-Apr 20" would be all but a day of 2030.
func (r *dateRange) sameOrder() error {
	const some = 1990
	for year := some; year < some+100; year++ {
		if r.wraps(year) != r.wraps(some) {
			return errors.New("which end of the range comes first depends on the year")
		}
	}
	return nil
}

// allRound says whether a range of days ends on the eve of the day that it begins with.
func (r *dateRange) allRound() bool {
	const common = 2023 // a year without 29 February
	return r.from.day != 0 && r.to.day != 0 && r.from.year == 0 && r.to.first(common)+1 == r.from.first(common)
}

func (e dateEnd) fifth() bool { return e.nth == 5 || e.nth == -5 }
