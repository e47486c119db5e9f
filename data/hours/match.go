package hours

// This file says whether a rule speaks of a day.

// matches says whether the rule speaks of a day, as what is unknown is read.
func (r *rule) matches(e *reading, d date) bool {
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
		if week >= w.from && week <= w.to && (week-w.from)%w.step == 0 {
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

func (r *dateRange) within(d date, fromYear, toYear int) bool {
	if r.from == r.to && !r.from.exists(fromYear) {
		return false
	}
	first, last := r.from.first(fromYear), r.to.last(toYear)
	if last < first && r.to.year == 0 {
		last = r.to.last(toYear + 1)
	}
	return d.n >= first && d.n <= last && (d.n-first)%r.step == 0
}

func matchDays(days []daySelector, e *reading, d date) bool {
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
