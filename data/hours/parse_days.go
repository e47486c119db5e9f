package hours

import (
	"errors"
	"fmt"
	"slices"
)

// This file reads weekdays, holidays and weeks.

// dayAhead says whether the k-th token from here is a weekday or a kind of holiday.
func (p *parser) dayAhead(k int) bool {
	t := p.peek(k)
	_, isDay := weekdays[t.text]
	_, isHoliday := holidayKinds[t.text]
	return t.kind == word && (isDay || isHoliday)
}

// days reads "Mo-Fr,PH", "PH Fr,Sa", "Mo[1,3] +1 day".
func (p *parser) days(r *rule) error {
	if r.days != nil {
		return errors.New("days are named twice in one rule")
	}
	var list []daySelector
	only := daySelector{} // the holiday that the weekdays after it narrow
	for {
		d, err := p.day(only)
		if err != nil {
			return err
		}
		_, weekday := weekdays[p.peek(0).text]
		switch narrows := d.weekdays == nil && weekday && p.peek(0).kind == word; {
		case narrows && !narrowed(list), !narrows && d.weekdays == nil && only.holiday != noHoliday:
			return errors.New("weekdays beside several days: of which of them?")
		case narrows:
			only = d
			continue
		}
		list = append(list, d)
		more, err := p.moreDays(d)
		if err != nil {
			return err
		}
		if !more {
			r.days = list
			return nil
		}
	}
}

// narrowed says whether all days of a list are weekdays of holidays.
func narrowed(list []daySelector) bool {
	return !slices.ContainsFunc(list, func(d daySelector) bool { return d.holiday == noHoliday || d.weekdays == nil })
}

// day reads a holiday, or a weekday of those holidays only if there are such.
func (p *parser) day(only daySelector) (d daySelector, err error) {
	t := p.peek(0)
	if kind, ok := holidayKinds[t.text]; ok && t.kind == word {
		p.i++
		d.holiday = kind
		if d.offset, err = p.dayOffset(); max(d.offset, -d.offset) > maxHolidayOffset {
			return d, fmt.Errorf("%d days from a holiday are too many", d.offset)
		}
		return d, err
	}
	if _, ok := weekdays[t.text]; !ok || t.kind != word {
		return d, p.unexpected("a day")
	}
	w, err := p.weekdayRange()
	only.weekdays = []weekdayRange{w}
	return only, err
}

// moreDays says whether another day follows, after a comma or between weekdays
// after a space. A holiday after a weekday without a comma, "Mo-We PH", may be
// one more day or only those that are both; so may what follows a moved
// holiday, "PH -1 day,Mo".
func (p *parser) moreDays(before daySelector) (bool, error) {
	comma := p.is(0, ",")
	k := 0
	if comma {
		k = 1
	}
	if !p.dayAhead(k) {
		return false, nil
	}
	_, holiday := holidayKinds[p.peek(k).text]
	if holiday && !comma || before.weekdays == nil && before.offset != 0 {
		return false, errors.New("one more day, or only those that are both? which days are meant is not clear")
	}
	p.i += k
	return true, nil
}

// weekdayRange reads "Mo-Fr", "Mo[1,3] +1 day".
func (p *parser) weekdayRange() (w weekdayRange, err error) {
	w.from = weekdays[p.peek(0).text]
	w.to = w.from
	p.i++
	switch {
	case p.take("-") || p.takeWord("to"):
		day, ok := weekdays[p.peek(0).text]
		if !ok || p.peek(0).kind != word {
			return w, p.unexpected("a weekday")
		}
		w.to = day
		p.i++
	case p.take("["):
		if w.nth, err = p.nths(); err != nil {
			return w, err
		}
		w.offset, err = p.dayOffset()
	}
	return w, err
}

// nths reads "1,3]", "2-4]", "-1]".
func (p *parser) nths() (list [][2]int, err error) {
	for {
		var n [2]int
		if n[0], err = p.nth(); err != nil {
			return nil, err
		}
		n[1] = n[0]
		if p.take("-") {
			if n[1], err = p.nth(); err != nil {
				return nil, err
			}
		}
		if n[1] < n[0] || n[0] < 0 && n[1] > 0 {
			return nil, errors.New("the numbers of weekdays must ascend")
		}
		list = append(list, n)
		if p.take(",") {
			continue
		}
		if !p.take("]") {
			return nil, p.unexpected("]")
		}
		return list, nil
	}
}

func (p *parser) nth() (int, error) {
	sign := 1
	if p.take("-") {
		sign = -1
	}
	t := p.peek(0)
	if t.kind != number || t.value < 1 || t.value > 5 {
		return 0, p.unexpected("a number from 1 to 5")
	}
	p.i++
	return sign * t.value, nil
}

// dayOffset reads "+1 day" or "-2 days", if it is there.
func (p *parser) dayOffset() (int, error) {
	if !(p.is(0, "+") || p.is(0, "-")) || p.peek(1).kind != number || p.peek(2).text != "day" && p.peek(2).text != "days" {
		return 0, nil
	}
	offset := p.peek(1).value
	if offset > maxHolidayOffset*50 {
		return 0, fmt.Errorf("%d days are too many", offset)
	}
	if p.is(0, "-") {
		offset = -offset
	}
	p.i += 3
	return offset, nil
}

// weeks reads "1-26", "1-53/2", "2,4-8".
func (p *parser) weeks(r *rule) error {
	if r.weeks != nil {
		return errors.New("weeks are named twice in one rule")
	}
	for {
		w := weekRange{step: 1}
		var err error
		if w.from, err = p.bounded("a week from 1 to 53", 1, 53); err != nil {
			return err
		}
		w.to = w.from
		if p.is(0, "-") && p.peek(1).kind == number {
			p.i++
			if w.to, err = p.bounded("a week from 1 to 53", 1, 53); err != nil {
				return err
			}
			if w.to < w.from {
				return errors.New("the weeks must ascend")
			}
			if w.step, err = p.step(); err != nil {
				return err
			}
		}
		r.weeks = append(r.weeks, w)
		if !p.is(0, ",") || p.peek(1).kind != number || p.clockAt(1) {
			return nil
		}
		p.i++
	}
}
