package hours

import (
	"errors"
	"fmt"
	"slices"
)

// timeAhead says whether a time is next: 8:00, 8h30, 8am, 8-18, sunrise,
// (sunrise+1:00).
func (p *parser) timeAhead() bool {
	t, next := p.peek(0), p.peek(1)
	switch {
	case t.kind == word:
		return events[t.text] != clock
	case p.is(0, "("):
		return events[next.text] != clock
	case t.kind != number || len(t.text) > 2:
		return false
	case p.colon(1) || next.kind == word && (next.text == "am" || next.text == "pm" || next.text == "h"):
		return true
	}
	return p.is(1, "-") && p.peek(2).kind == number && len(p.peek(2).text) <= 2
}

// times reads ranges of time, with commas or only spaces between them.
func (p *parser) times(r *rule) error {
	if r.late {
		return errors.New("times stand before and after the days; which days are meant is not clear")
	}
	for {
		t, err := p.timeRange()
		if err != nil {
			return err
		}
		if r.unended() {
			return errors.New("a time without an end stands before another; when it ends is not clear")
		}
		if err := p.addRange(r, t); err != nil {
			return err
		}
		if p.is(0, "/") {
			return errors.New("a period is for points in time, not for opening hours")
		}
		if p.is(0, ",") {
			p.i++
			if p.timeAhead() {
				continue
			}
			p.i--
		}
		if r.unendedAmong() {
			return errors.New("a time without an end overlaps another; which of them counts is not clear")
		}
		return nil
	}
}

// overnight says whether a range that the sun begins or ends goes from an
// evening to a morning, though its end names no next day: "dusk-06:30".
func (t timeRange) overnight() bool {
	return t.sunlit() && !t.from.early() && t.to.early()
}

// early says whether the moment is of the morning.
func (m moment) early() bool {
	return m.event == sunrise || m.event == dawn || m.event == clock && m.min < dayMin/2
}

// unended says whether one of the times has no end.
func (r *rule) unended() bool {
	return slices.ContainsFunc(r.times, func(t timeRange) bool { return t.openEnd })
}

// addRange adds a range and, for "10:00-18:00+", that its end is open.
func (p *parser) addRange(r *rule, t timeRange) error {
	if !p.take("+") {
		r.addTime(t)
		return nil
	}
	switch {
	case t.overnight():
		t.to.min += dayMin
	case t.sunlit() && t.from.early() == t.to.early():
		return errors.New("a time of the sun without an end; on which day it ends is not clear")
	}
	r.addTime(t)
	r.addTime(openEnd(t.to))
	if end := r.times[0].to; end.event == clock && end.min > 2*dayMin {
		return errors.New("a time may end after the next day")
	}
	return nil
}

// unendedAmong says whether times overlap, or may, of which one has no end:
// "08:00-12:30,05:30-06:00+" is closed at some time after six, or is not.
func (r *rule) unendedAmong() bool {
	if !r.unended() {
		return false
	}
	for i, a := range r.times {
		for _, b := range r.times[i+1:] {
			if a.openEnd && a.from == b.to { // "10:00-18:00+"
				continue
			}
			if a.sunlit() || b.sunlit() || a.from.min < b.to.min && b.from.min < a.to.min {
				return true
			}
		}
	}
	return false
}

// sunlit says whether the sun begins or ends the range.
func (t timeRange) sunlit() bool { return t.from.event != clock || t.to.event != clock }

// addTime adds a range; one with an open end goes before the others, so that
// they count where both speak.
func (r *rule) addTime(t timeRange) {
	if t.openEnd {
		r.times = append([]timeRange{t}, r.times...)
		return
	}
	r.times = append(r.times, t)
}

// openEnd returns how long after from nobody knows: until midnight, in the
// evening for ten hours, at night for eight (as the library opening_hours.js
// takes it; the specification leaves it to the reader), and after sunset until
// eight in the morning.
func openEnd(from moment) timeRange {
	to := moment{min: dayMin}
	at := from.min
	switch {
	case from.event == sunset || from.event == dusk:
		to.min = dayMin + 8*60
	case at >= 22*60:
		to.min = from.min + 8*60
	case at >= 17*60:
		to.min = from.min + 10*60
	}
	return timeRange{from: from, to: to, openEnd: true}
}

func (p *parser) timeRange() (t timeRange, err error) {
	var as written
	var fromHalf, toHalf string
	as.start = p.peek(0)
	if t.from, fromHalf, err = p.moment(); err != nil {
		return t, err
	}
	if p.take("+") {
		return p.openRange(t.from)
	}
	if !p.take("-") && !p.takeWord("to") {
		return t, errors.New("a point in time is no opening time; a range is expected")
	}
	as.finish, as.after = p.peek(0), p.peek(1)
	if t.to, toHalf, err = p.moment(); err != nil {
		return t, err
	}
	if err := halves(&t, fromHalf, toHalf); err != nil {
		return t, err
	}
	if t.from.event == clock && t.from.min >= dayMin {
		return t, errors.New("a time starts after the end of its day")
	}
	if t.from.event != clock || t.to.event != clock {
		return t, nil
	}
	if toHalf == "" {
		if err := as.oneReading(t); err != nil {
			return t, err
		}
	}
	if t.to.min <= t.from.min {
		t.to.min += dayMin
	}
	if t.to.min > 2*dayMin {
		return t, errors.New("a time ends after the next day")
	}
	return t, nil
}

// openRange is "10:00+".
func (p *parser) openRange(from moment) (timeRange, error) {
	if p.peek(0).kind == number {
		return timeRange{}, errors.New("a time that is counted from the sun stands in brackets: (sunrise+1:00)")
	}
	return openEnd(from), nil
}

// written are the hours of a range as the text has them, and what follows the second.
type written struct{ start, finish, after token }

// bare says that the second hour has no minutes.
func (w written) bare() bool {
	return w.after.text != ":" && w.after.text != "." && w.after.text != "h"
}

// of24 says that the hours belong to a clock of 24 hours, as "0:00", "01:00" and "1h" do.
func (w written) of24() bool {
	return w.start.text[0] == '0' || w.finish.text[0] == '0' || w.after.text == "h"
}

// oneReading refuses what is read in two ways: "9-5" and "9:30-8:00" may be of a
// clock of twelve hours, "7-30" and "10-00" may be one time, not two.
func (w written) oneReading(t timeRange) error {
	if w.bare() && (w.finish.text == "00" || t.to.min > dayMin) {
		return errors.New("two times, or hours and minutes? write 07:30-14:00")
	}
	const noon = 13 * 60 // 12:59 is the last time of a clock of twelve hours
	short := len(w.start.text) == 1 || len(w.finish.text) == 1 || w.bare()
	if short && !w.of24() && t.from.min < noon && t.to.min < noon &&
		(t.to.min <= t.from.min || t.from.min < 6*60 && len(w.start.text) == 1) {
		return errors.New("morning or evening? write hours from 00 to 24 with two digits")
	}
	return nil
}

// halves applies am and pm.
func halves(t *timeRange, from, to string) error {
	if to == "" && from == "" {
		return nil
	}
	if to == "" || from == "" {
		return errors.New("am or pm is missing at one of the two times")
	}
	for _, h := range []struct {
		m    *moment
		half string
	}{{&t.from, from}, {&t.to, to}} {
		if h.m.min < 60 || h.m.min >= 13*60 {
			return fmt.Errorf("%d:%02d %s is no time", h.m.min/60, h.m.min%60, h.half)
		}
		h.m.min %= 12 * 60
		if h.half == "pm" {
			h.m.min += 12 * 60
		}
	}
	return nil
}

// moment reads a time and whether am or pm follows.
func (p *parser) moment() (m moment, half string, err error) {
	t := p.peek(0)
	switch {
	case t.kind == word && events[t.text] != clock:
		p.i++
		return moment{event: events[t.text]}, "", nil
	case p.is(0, "(") && events[p.peek(1).text] != clock:
		m, err = p.fromSun()
		return m, "", err
	case t.kind != number || len(t.text) > 2:
		return m, "", p.unexpected("a time")
	}
	p.i++
	minutes := p.minutes()
	if minutes > 59 || t.value > 48 || t.value == 48 && minutes > 0 {
		return m, "", fmt.Errorf("%d:%02d is no time", t.value, minutes)
	}
	m.min = 60*t.value + minutes
	if next := p.peek(0); next.kind == word && (next.text == "am" || next.text == "pm") {
		half = next.text
		p.i++
	}
	return m, half, nil
}

// minutes reads what follows an hour: ":30", ".30", "h30", "h" or nothing.
func (p *parser) minutes() (minutes int) {
	switch {
	case p.colon(0):
		minutes = p.peek(1).value
		p.i += 2
	case p.takeWord("h"):
		if next := p.peek(0); next.kind == number && len(next.text) == 2 && !next.spaced {
			minutes = next.value
			p.i++
		}
	}
	return minutes
}

// fromSun reads "(sunrise+1:00)".
func (p *parser) fromSun() (m moment, err error) {
	m.event = events[p.peek(1).text]
	p.i += 2
	sign := 1
	if p.take("-") {
		sign = -1
	} else if !p.take("+") {
		return m, p.unexpected("+ or -")
	}
	offset, _, err := p.moment()
	if err != nil {
		return m, err
	}
	if offset.event != clock || !p.take(")") {
		return m, p.unexpected("a time and )")
	}
	m.min = sign * offset.min
	return m, nil
}
