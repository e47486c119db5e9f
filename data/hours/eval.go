package hours

import (
	"math"
	"slices"
	"time"
)

// A sunTime is when an event happens on a day, once asked for.
type sunTime struct {
	set bool
	day int
	utc float64
	ok  bool
}

// An evaluator says what a schedule says about days at one place.
//
// What is not known (whether a day is a holiday, which zone the sun's time is
// in) it answers in all ways that are possible, one after the other; where the
// answers differ the state is unknown.
type evaluator struct {
	s     *Schedule
	at    Where
	zone  *time.Location
	first int // the first day

	reading // the one in question

	suns  [dusk + 1][2]sunTime // by event, the last even and odd day
	last  date                 // the day evaluated last
	spans []span
	edges []int
	out   []Period
}

// A span is what a rule says about a part of a day.
type span struct {
	from, to int
	state    State
	rule     *rule
	openEnd  bool
}

func newEvaluator(s *Schedule, from time.Time, at Where) *evaluator {
	e := &evaluator{s: s, at: at, zone: from.Location(), first: dayOf(from)}
	e.last = dateOf(e.first - 1)
	e.spans, e.edges, e.out = make([]span, 0, 8), make([]int, 0, 18), make([]Period, 0, 8)
	if s.holidays {
		e.holidays = holidaysOf(at)
	}
	return e
}

// day returns the periods of a day, in minutes of the day. The result is valid
// until the next call.
func (e *evaluator) day(n int) []Period {
	e.today = n
	bits := e.uncertain(n)
	zones := e.zones(n)
	if bits == nil && len(zones) == 1 {
		e.ahead = zones[0]
		return e.once(n)
	}
	var sum []Period
	for ways := range 1 << len(bits) {
		for i, b := range bits {
			e.yes[b] = ways>>i&1 == 1
		}
		for _, e.ahead = range zones {
			sum = merge(sum, e.once(n))
		}
	}
	return sum
}

// uncertain returns which of e.yes matter on a day.
func (e *evaluator) uncertain(n int) (bits []int) {
	if !e.s.holidays {
		return nil
	}
	for i := range e.yes {
		e.yes[i] = false
	}
	if e.s.mentions(publicHoliday) {
		if e.holidays.on(n) == Unknown {
			bits = append(bits, 0)
		}
		for k := -maxHolidayOffset - 1; k <= maxHolidayOffset; k++ {
			if k != 0 && e.holidays.on(n+k) == Unknown {
				bits = append(bits, 1)
				break
			}
		}
	}
	if e.s.mentions(schoolHoliday) {
		bits = append(bits, 2, 3)
	}
	return bits
}

// once evaluates a day in the way that e has been set to.
func (e *evaluator) once(n int) []Period {
	yesterday := e.last
	if yesterday.n != n-1 {
		yesterday = dateOf(n - 1)
	}
	if e.last.n != n {
		e.last = dateOf(n)
	}
	e.collect(e.last, yesterday)
	e.edges = append(e.edges[:0], 0, dayMin)
	for _, s := range e.spans {
		e.edges = append(e.edges, s.from, s.to)
	}
	slices.Sort(e.edges)
	e.out = e.out[:0]
	for i := 1; i < len(e.edges); i++ {
		from, to := e.edges[i-1], e.edges[i]
		if from == to {
			continue
		}
		state := e.stateAt(from)
		if k := len(e.out); k > 0 && e.out[k-1].State == state {
			e.out[k-1].To = to
		} else {
			e.out = append(e.out, Period{from, to, state})
		}
	}
	return e.out
}

// stateAt returns the state of a minute. A time without an end goes on into the
// times after it, also of its own rule and of the next morning: who opens again
// at a stated time has closed, but when is not known.
func (e *evaluator) stateAt(minute int) State {
	state, unended, closed := Closed, false, true // closed: before the rule in question
	var last *rule
	for _, s := range e.spans {
		if s.rule != last {
			last, closed = s.rule, state == Closed
		}
		if s.from > minute || minute >= s.to || s.rule.joint == fallback && !closed {
			continue
		}
		state, unended = s.state, s.state != Closed && (s.openEnd || unended)
	}
	if unended && state == Open {
		return Unknown
	}
	return state
}

// collect fills e.spans, in the order in which later ones replace earlier.
func (e *evaluator) collect(today, yesterday date) {
	e.spans = e.spans[:0]
	for i := range e.s.rules {
		r := &e.s.rules[i]
		if r.matches(&e.reading, today) {
			// A normal rule that opens replaces all that was said about the day;
			// one that closes replaces the times that it names. Two rules without
			// days, "10:00-12:00; 14:00-16:00", are alternatives as well.
			if r.joint == normal && r.state != Closed && (r.dated() || i > 0 && !e.s.rules[i-1].dated()) {
				e.spans = e.spans[:0]
			}
			if r.times == nil {
				e.spans = append(e.spans, span{0, dayMin, r.state, r, false})
			}
			e.add(r, today.n, 0)
		}
		if r.pastMidnight() && r.matches(&e.reading, yesterday) {
			e.add(r, yesterday.n, dayMin)
		}
	}
}

func (r *rule) pastMidnight() bool {
	for i := range r.times {
		t := &r.times[i]
		if t.to.min > dayMin || t.from.event != 0 || t.to.event != 0 {
			return true
		}
	}
	return false
}

// add adds what a rule says about day n, which began shift minutes ago.
func (e *evaluator) add(r *rule, n, shift int) {
	for i := range r.times {
		t := &r.times[i]
		from, okFrom := e.minutes(t.from, n)
		to, okTo := e.minutes(t.to, n)
		state := r.state
		switch {
		case !okFrom || !okTo: // no sunrise at all: nobody knows
			from, to, state = 0, 2*dayMin, Unknown
		case to <= from:
			to += dayMin
			if doubtful(from, to) {
				state = Unknown
			}
		}
		if t.openEnd && state == Open {
			state = Unknown
		}
		if from, to = max(0, from-shift), min(dayMin, to-shift); from < to {
			e.spans = append(e.spans, span{from, to, state, r, t.openEnd})
		}
	}
}

// doubtful says whether a range that the sun ends or begins, and that would go
// on until the next day, is hardly meant so: "sunset-21:00" in June, when the
// sun sets later. What is meant goes from one half of the day to the other.
func doubtful(from, to int) bool {
	const noon = dayMin / 2
	return from/noon == (to-dayMin)/noon || to-from > 20*60
}

// merge returns periods whose state is unknown where the two differ.
func merge(a, b []Period) []Period {
	if a == nil {
		return slices.Clone(b)
	}
	var out []Period
	for i, j, from := 0, 0, 0; i < len(a) && j < len(b); {
		to, state := min(a[i].To, b[j].To), a[i].State
		if state != b[j].State {
			state = Unknown
		}
		if k := len(out); k > 0 && out[k-1].State == state {
			out[k-1].To = to
		} else {
			out = append(out, Period{from, to, state})
		}
		from = to
		if a[i].To == to {
			i++
		}
		if b[j].To == to {
			j++
		}
	}
	return out
}

// minutes returns when a moment is on day n.
func (e *evaluator) minutes(m moment, n int) (min int, ok bool) {
	if m.event == clock {
		return m.min, true
	}
	if e.at.Lat == 0 && e.at.Lon == 0 {
		return 0, false
	}
	// Today's are asked for again tomorrow, for what passes midnight.
	known := &e.suns[m.event][n&1]
	if !known.set || known.day != n {
		known.set, known.day = true, n
		known.utc, known.ok = sunMinutes(m.event, n, e.at)
	}
	// Of the morning or evening of this date, though that be after midnight.
	min = int(math.Round(known.utc)) + e.ahead + m.min
	return min, known.ok && min >= 0
}

// zones returns by how many minutes local time may be ahead of UTC on a day.
func (e *evaluator) zones(n int) []int {
	if !e.s.sun {
		return []int{0}
	}
	if e.zone == time.UTC {
		// Legal time follows the sun's from one hour behind to three ahead.
		hour := int(math.Round(e.at.Lon / 15))
		var zones []int
		for h := hour - 1; h <= hour+3; h++ {
			zones = append(zones, 60*h)
		}
		return zones
	}
	d := dateOf(n)
	_, offset := time.Date(d.year, time.Month(d.month), d.day, 12, 0, 0, 0, e.zone).Zone()
	return []int{offset / 60}
}
