package hours

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Parse reads a value of the key opening_hours.
//
// It takes what the specification allows, in any case and spacing, and a few
// habits that have one meaning only ("Mon", "8-18", "8:00 am"). Anything else
// is an error that names the place in the text: it must then count as unknown.
// Points in time, as for collection times, are no opening hours.
func Parse(text string) (*Schedule, error) {
	if len(text) > 2000 {
		return nil, errors.New("opening hours: a text of more than 2000 bytes")
	}
	clean := plain.Replace(text)
	tokens, err := scan(clean)
	if err != nil {
		return nil, fmt.Errorf("opening hours %q: %w", text, err)
	}
	p := &parser{tokens: tokens}
	for joint := normal; ; {
		var r rule
		next, err := p.rule(&r, joint)
		if err != nil {
			where := "the end"
			if rest := clean[p.peek(0).at:]; rest != "" {
				where = strconv.Quote(clip(rest))
			}
			return nil, fmt.Errorf("opening hours %q at %s: %w", text, where, err)
		}
		if next == stop {
			break
		}
		joint = next
	}
	if len(p.rules) == 0 {
		return nil, fmt.Errorf("opening hours %q say nothing", text)
	}
	s := &Schedule{rules: p.rules}
	if s.onlyCloses() {
		s.rules = append([]rule{{state: Unknown}}, s.rules...)
	}
	s.holidays = s.mentions(publicHoliday) || s.mentions(schoolHoliday)
	for i := range s.rules {
		for _, t := range s.rules[i].times {
			s.sun = s.sun || t.from.event != clock || t.to.event != clock
		}
	}
	return s, nil
}

func clip(s string) string {
	if r := []rune(s); len(r) > 20 {
		return string(r[:20]) + "…"
	}
	return s
}

// stop is no joint: the text ends.
const stop joint = -1

// rule reads a rule and what joins the next one to it.
func (p *parser) rule(r *rule, joint joint) (next joint, err error) {
	r.joint, r.state = joint, Open
	for start := p.i; ; {
		switch t := p.peek(0); {
		case t.kind == end || p.is(0, ";") || p.is(0, "||"):
			return p.finish(r, start)
		case p.is(0, ","):
			if done, err := p.comma(r); done || err != nil {
				return additional, err
			}
		case p.takeState(r):
		case p.is(0, ":") && p.i > start && r.times == nil: // for readability
			p.i++
		case p.alwaysAhead():
			r.always = true
			p.i += 3
		default:
			if err := p.selector(r); err != nil {
				return 0, err
			}
		}
	}
}

// finish ends a rule that began at a token.
func (p *parser) finish(r *rule, start int) (next joint, err error) {
	if p.i > start {
		if err := p.add(r); err != nil {
			return 0, err
		}
	} else if p.is(0, "||") || r.joint == fallback { // else nothing: a separator too many
		return 0, errors.New("nothing stands beside the fallback ||")
	}
	switch {
	case p.take(";"):
		return normal, nil
	case p.take("||"):
		return fallback, nil
	}
	return stop, nil
}

// comma goes on after a comma: with more times, or after a time or a state with a new rule; then the old one is done.
func (p *parser) comma(r *rule) (done bool, err error) {
	p.i++
	switch ahead := p.timeAhead(); {
	case r.times == nil && !r.stated && !r.always && !ahead:
		return false, errors.New("no times stand before the comma")
	case ahead && !r.stated && !r.always:
		return false, p.times(r)
	}
	return true, p.add(r)
}

// takeState reads "off", or a comment, if it is next.
func (p *parser) takeState(r *rule) bool {
	t := p.peek(0)
	state, ok := states[t.text]
	switch {
	case t.kind == word && ok:
		r.state = state
	case t.kind == comment && !r.stated:
		r.state = Unknown
	case t.kind != comment:
		return false
	}
	r.stated = true
	p.i++
	return true
}

// add adds a rule that has been read to its end.
//
// Times without days after a rule with days ("Tu 09:00-12:00; 13:00-18:00",
// "Su off; 10:00-18:00") mean every day to the specification, and hardly ever
// to those who wrote them: a place must not be open by such a reading.
func (p *parser) add(r *rule) error {
	if r.joint == additional && p.rules[len(p.rules)-1].joint == fallback {
		return errors.New("does what follows the comma belong to the fallback ||, or to all?")
	}
	if r.state == Closed && r.unended() {
		return errors.New("closed from a time on: until when?")
	}
	if r.besideFallback(p.rules) {
		return errors.New("a fallback || beside a time without an end; which of them counts is not clear")
	}
	if r.nthAmong() {
		return errors.New("a weekday of a month beside other days or dates: does it narrow them, or add to them?")
	}
	if r.joint != fallback && r.state == Open && !r.dated() {
		for i := range p.rules {
			if p.rules[i].dated() {
				return errors.New("times without days follow a rule with days; which days are meant is not clear")
			}
		}
	}
	p.rules = append(p.rules, *r)
	return nil
}

// nthAmong says whether a mere weekday of a month, "Jun Sa[3]", stands with
// other dates or before weekdays: "May 11,Oct Th[-1]", "Jun Sa[3] We-Su".
func (r *rule) nthAmong() bool {
	return (len(r.dates) > 1 || r.days != nil) &&
		slices.ContainsFunc(r.dates, func(d dateRange) bool { return d.from.nth != 0 && d.from == d.to })
}

// selector reads one list of times, days, weeks, dates or years.
func (p *parser) selector(r *rule) error {
	t := p.peek(0)
	switch {
	case p.timeAhead():
		return p.times(r)
	case r.times != nil && r.dated() && !r.late:
		return errors.New("days stand before and after the times; which times are meant is not clear")
	}
	r.late = r.times != nil
	switch {
	case p.dayAhead(0):
		return p.days(r)
	case t.kind == word && (t.text == "week" || t.text == "weeks"):
		p.i++
		return p.weeks(r)
	case p.dateAhead():
		return p.dates(r)
	case t.kind == number && len(t.text) == 4 && t.value >= 1900:
		return p.years(r)
	case t.kind == end:
		return errors.New("something is missing at the end")
	}
	return fmt.Errorf("%s means nothing here", strings.TrimSpace(t.text))
}
