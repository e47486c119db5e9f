package hours

import "strings"

// holidays answers whether a day is a public holiday at one place. It keeps
// the years that it has been asked about.
type holidays struct {
	calendars []*calendar // those that may hold; none: nothing is known
	region    string
	years     []holidayYear
}

// A holidayYear has a state per day: Open is a holiday, Closed is none.
type holidayYear struct {
	year, first int
	days        [366]State
}

// holidaysOf takes the country that is stated, "DE" or "DE-BE", or finds it
// from the position.
func holidaysOf(at Where) (h holidays) {
	country, region, _ := strings.Cut(strings.ToUpper(at.Country), "-")
	countries := []string{country}
	if country == "" && (at.Lat != 0 || at.Lon != 0) {
		countries = CountriesAt(at.Lat, at.Lon)
	}
	for _, country := range countries {
		if c := calendars[country]; c != nil {
			h.calendars = append(h.calendars, c)
		}
	}
	h.region = region
	return h
}

// on says whether day n is a holiday: Open yes, Closed no, Unknown perhaps.
func (h *holidays) on(n int) State {
	if h.calendars == nil {
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

// of draws up a year. Where several countries are possible, a day is certain
// only if they agree.
func (h *holidays) of(year int) holidayYear {
	all := h.calendars[0].year(year, h.region)
	for _, c := range h.calendars[1:] {
		other := c.year(year, h.region)
		for k := range all.days {
			if all.days[k] != other.days[k] {
				all.days[k] = Unknown
			}
		}
	}
	return all
}

func (c *calendar) year(year int, region string) holidayYear {
	y := holidayYear{year: year, first: dayNumber(year, 1, 1)}
	y.mark(c.all, Open)
	for _, r := range c.regions {
		switch {
		case r.region == "" || r.maybe && r.region == region || region == "":
			y.mark(r.days, Unknown)
		case r.region == region:
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
		if d.holds(y.year) {
			set(d.in(y.year))
		}
	}
	for _, d := range days {
		if !d.holds(y.year) {
			continue
		}
		if n, ok := y.inLieu(d); ok {
			set(n)
		}
	}
}

// inLieu returns the free weekday after a holiday that falls on a weekend, where the law gives one.
func (y *holidayYear) inLieu(d holiday) (n int, ok bool) {
	n = d.in(y.year)
	switch weekday := dateOf(n).weekday; {
	case d.moved == '*' && weekday == 0, d.moved == '^' && (weekday == 0 || weekday == 6):
	default:
		return 0, false
	}
	for n++; dateOf(n).weekday%6 == 0 || y.taken(n); n++ {
	}
	return n, true
}

func (y *holidayYear) taken(n int) bool {
	k := n - y.first
	return k < 366 && y.days[k] == Open
}
