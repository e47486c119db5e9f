package hours

import "strings"

// holidays answers whether a day is a public holiday at one place. It keeps
// the years that it has been asked about.
type holidays struct {
	calendar *calendar // nil: of this country nothing is known
	region   string
	years    []holidayYear
}

// A holidayYear has a state per day: Open is a holiday, Closed is none.
type holidayYear struct {
	year, first int
	days        [366]State
}

// holidaysOf takes "DE" or "DE-BE".
func holidaysOf(where string) holidays {
	country, region, _ := strings.Cut(strings.ToUpper(where), "-")
	return holidays{calendar: calendars[country], region: region}
}

// on says whether day n is a holiday: Open yes, Closed no, Unknown perhaps.
func (h *holidays) on(n int) State {
	if h.calendar == nil {
		return Unknown
	}
	for i := range h.years {
		if k := n - h.years[i].first; k >= 0 && k < 366 && (k < 365 || dateOf(n).year == h.years[i].year) {
			return h.years[i].days[k]
		}
	}
	h.years = append(h.years, h.of(dateOf(n).year))
	return h.on(n)
}

func (h *holidays) of(year int) holidayYear {
	y := holidayYear{year: year, first: dayNumber(year, 1, 1)}
	y.mark(h.calendar.all, Open)
	for _, r := range h.calendar.regions {
		switch {
		case r.region == "" || r.maybe && r.region == h.region || h.region == "":
			y.mark(r.days, Unknown)
		case r.region == h.region:
			y.mark(r.days, Open)
		}
	}
	return y
}

// mark enters the days of a year, and in place of those on a weekend the
// weekday that the law names instead.
func (y *holidayYear) mark(days []holiday, as State) {
	set := func(n int) {
		if k := n - y.first; k >= 0 && k < 366 && y.days[k] != Open {
			y.days[k] = as
		}
	}
	for _, d := range days {
		if y.year >= d.since && y.year <= d.last {
			set(d.in(y.year))
		}
	}
	for _, d := range days {
		if y.year < d.since || y.year > d.last || d.moved != '*' && d.moved != '^' {
			continue
		}
		n := d.in(y.year)
		if weekday := dateOf(n).weekday; weekday == 0 || weekday == 6 && d.moved == '^' {
			for n++; dateOf(n).weekday%6 == 0 || y.taken(n); n++ {
			}
			set(n)
		}
	}
}

func (y *holidayYear) taken(n int) bool {
	k := n - y.first
	return k < 366 && y.days[k] == Open
}
