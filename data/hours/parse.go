package hours

import (
	"errors"
	"fmt"
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

// onlyCloses says whether the text names times at which the place is closed and
// none at which it is open: "Tu off" leaves the rest unsaid.
func (s *Schedule) onlyCloses() bool {
	part := false
	for i := range s.rules {
		r := &s.rules[i]
		if r.state != Closed {
			return false
		}
		part = part || r.dated() || r.times != nil
	}
	return part
}

func clip(s string) string {
	if r := []rune(s); len(r) > 20 {
		return string(r[:20]) + "…"
	}
	return s
}

// stop is no joint: the text ends.
const stop joint = -1

type parser struct {
	tokens []token
	i      int
	rules  []rule
}

func (p *parser) peek(k int) token { return p.tokens[min(p.i+k, len(p.tokens)-1)] }

// is says whether the k-th token from here is that sign.
func (p *parser) is(k int, text string) bool {
	t := p.peek(k)
	return t.kind == sign && t.text == text
}

// take steps over the sign if it is next.
func (p *parser) take(text string) bool {
	if p.is(0, text) {
		p.i++
		return true
	}
	return false
}

// takeWord steps over the word if it is next.
func (p *parser) takeWord(text string) bool {
	if t := p.peek(0); t.kind == word && t.text == text {
		p.i++
		return true
	}
	return false
}

// rule reads a rule and what joins the next one to it.
func (p *parser) rule(r *rule, joint joint) (next joint, err error) {
	r.joint, r.state = joint, Open
	start, stated := p.i, false
	for {
		t := p.peek(0)
		switch {
		case t.kind == end || p.is(0, ";") || p.is(0, "||"):
			if p.i == start { // nothing: a separator too many
				if p.is(0, "||") || joint == fallback {
					return 0, errors.New("nothing stands beside the fallback ||")
				}
			} else if err := p.add(r); err != nil {
				return 0, err
			}
			switch {
			case p.take(";"):
				return normal, nil
			case p.take("||"):
				return fallback, nil
			}
			return stop, nil
		case p.is(0, ","):
			// After a time or a state a new selector starts a new rule.
			p.i++
			if complete := r.times != nil || stated || r.always; !complete && !p.timeAhead() {
				return 0, errors.New("no times stand before the comma")
			} else if p.timeAhead() && !stated && !r.always {
				if err := p.times(r); err != nil {
					return 0, err
				}
				continue
			}
			return additional, p.add(r)
		case t.kind == comment:
			if !stated {
				r.state = Unknown
			}
			stated = true
			p.i++
		case t.kind == word:
			if s, ok := states[t.text]; ok {
				r.state, stated = s, true
				p.i++
				continue
			}
			if err := p.selector(r); err != nil {
				return 0, err
			}
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

// add adds a rule that has been read to its end.
//
// Times without days after a rule with days ("Tu 09:00-12:00; 13:00-18:00",
// "Su off; 10:00-18:00") mean every day to the specification, and hardly ever
// to those who wrote them: a place must not be open by such a reading.
func (p *parser) add(r *rule) error {
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

// selector reads one list of times, days, weeks, dates or years.
func (p *parser) selector(r *rule) error {
	t := p.peek(0)
	_, isMonth := months[t.text]
	_, isWeekday := weekdays[t.text]
	_, isHoliday := holidayKinds[t.text]
	switch {
	case p.timeAhead():
		return p.times(r)
	case t.kind == word && (isWeekday || isHoliday):
		return p.days(r)
	case t.kind == word && (t.text == "week" || t.text == "weeks"):
		p.i++
		return p.weeks(r)
	case t.kind == word && (isMonth || t.text == "easter"):
		return p.dates(r)
	case t.kind == number && len(t.text) == 4 && t.value >= 1900:
		if n := p.peek(1); n.kind == word && (n.text == "easter" || months[n.text] > 0) {
			return p.dates(r)
		}
		return p.years(r)
	case t.kind == end:
		return errors.New("something is missing at the end")
	}
	return fmt.Errorf("%s means nothing here", strings.TrimSpace(t.text))
}

// alwaysAhead says whether "24/7" is next.
func (p *parser) alwaysAhead() bool {
	return p.peek(0).text == "24" && p.is(1, "/") && p.peek(2).text == "7"
}

// unexpected is for what a list cannot hold.
func (p *parser) unexpected(want string) error {
	if t := p.peek(0); t.kind != end {
		return fmt.Errorf("%s is expected, not %s", want, t.text)
	}
	return fmt.Errorf("%s is missing at the end", want)
}
