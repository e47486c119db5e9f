package hours

import "errors"

// This file reads years and dates.

// years reads "2020", "2020-2022", "2020+", "2020-2030/2".
func (p *parser) years(r *rule) error {
	if r.years != nil {
		return errors.New("years are named twice in one rule")
	}
	for {
		y := yearRange{step: 1}
		var err error
		if y.from, err = p.bounded("a year", 1900, 9999); err != nil {
			return err
		}
		y.to = y.from
		switch {
		case p.take("+"):
			y.to = 9999
		case p.is(0, "-") && p.peek(1).kind == number && len(p.peek(1).text) == 4:
			p.i++
			if y.to, err = p.bounded("a year", 1900, 9999); err != nil {
				return err
			}
			if y.to < y.from {
				return errors.New("the years must ascend")
			}
			if y.step, err = p.step(); err != nil {
				return err
			}
		}
		r.years = append(r.years, y)
		if !p.is(0, ",") || p.peek(1).kind != number || len(p.peek(1).text) != 4 {
			return nil
		}
		p.i++
	}
}

// dates reads "Apr", "Nov-Mar", "Dec 24,31", "2021 Mar 28-Apr 16", "Mar
// Su[-1]-Oct Su[-1]", "easter -2 days-easter +1 day".
func (p *parser) dates(r *rule) error {
	if r.dates != nil {
		return errors.New("dates are named twice in one rule")
	}
	var before dateEnd // what a mere day of the month belongs to
	for {
		d, err := p.dateRange(before)
		if err != nil {
			return err
		}
		r.dates = append(r.dates, d)
		if err := r.datesAlike(); err != nil {
			return err
		}
		more := false
		if before, more = p.moreDates(d.to); !more {
			return nil
		}
		p.i++
	}
}

// moreDates says whether a comma and another date follow, and what a mere day of the month in it belongs to.
func (p *parser) moreDates(last dateEnd) (before dateEnd, more bool) {
	if !p.is(0, ",") {
		return before, false
	}
	switch next := p.peek(1); {
	case next.kind == word && (months[next.text] > 0 || next.text == "easter"),
		next.kind == number && len(next.text) == 4 && months[p.peek(2).text] > 0:
		return before, true
	case next.kind == number && len(next.text) <= 2 && last.day != 0 && !p.clockAt(1):
		return last, true
	}
	return before, false
}

func (p *parser) dateRange(before dateEnd) (d dateRange, err error) {
	d.step = 1
	if d.from, err = p.dateEnd(before); err != nil {
		return d, err
	}
	d.to = d.from
	if p.take("-") {
		if d.to, err = p.dateEnd(d.from); err != nil {
			return d, err
		}
		if d.step, err = p.step(); err != nil {
			return d, err
		}
	}
	return d, d.oneReading()
}

// dateAhead says whether a month or Easter is next, with or without a year.
func (p *parser) dateAhead() bool {
	t := p.peek(0)
	if t.kind == number && len(t.text) == 4 && t.value >= 1900 {
		t = p.peek(1)
	}
	return t.kind == word && (months[t.text] > 0 || t.text == "easter")
}

// dateEnd reads one end of a range; what the second end leaves out it takes
// from the first: "2021 Mar 28-Apr 16", "Apr 10-16".
func (p *parser) dateEnd(first dateEnd) (e dateEnd, err error) {
	if t := p.peek(0); t.kind == number && len(t.text) == 4 {
		e.year = t.value
		p.i++
	}
	t := p.peek(0)
	switch month := months[t.text]; {
	case t.kind == word && t.text == "easter":
		e.easter = true
		p.i++
		e.offset, err = p.dayOffset()
		return e, err
	case t.kind == word && month > 0:
		e.month = month
		p.i++
		return p.within(e, first)
	case t.kind == number && len(t.text) <= 2 && first.day != 0 && e.year == 0:
		e.month, e.year = first.month, first.year
		e.day, err = p.dayOfMonth(e)
		return e, err
	}
	return e, p.unexpected("a month")
}

// within reads which day of its month an end is, if it names one: "24", "Su[-1] +1 day".
func (p *parser) within(e, first dateEnd) (dateEnd, error) {
	var err error
	t := p.peek(0)
	day, isWeekday := weekdays[t.text]
	// "Apr-Oct Su[2]" is the second Sunday of seven months.
	afterMonth := first.month > 0 && first.day == 0 && first.nth == 0
	switch {
	case t.kind == number && len(t.text) <= 2 && !p.clockAt(0) && !p.alwaysAhead():
		e.day, err = p.dayOfMonth(e)
	case t.kind == word && isWeekday && p.is(1, "[") && !afterMonth:
		p.i += 2
		e.weekday = day
		e.nth, err = p.nth()
		if err == nil && !p.take("]") {
			err = p.unexpected("]")
		}
	}
	if err == nil {
		e.offset, err = p.dayOffset()
	}
	if err == nil {
		err = e.oneReading()
	}
	return e, err
}

// dayOfMonth reads a day that the month of an end has in its year, or in any.
func (p *parser) dayOfMonth(e dateEnd) (int, error) {
	year := e.year
	if year == 0 {
		year = 2024
	}
	return p.bounded("a day of the month", 1, daysIn(year, e.month))
}
