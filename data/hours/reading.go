package hours

// A reading is one way in which what is not known may be.
type reading struct {
	holidays holidays
	today    int
	yes      [4]bool // a holiday that may be is one: public today, on other days, school today, on other days
	ahead    int     // minutes of local time ahead of UTC
}

// isHoliday says whether day n is one.
func (r *reading) isHoliday(kind holidayKind, n int) bool {
	which := 0
	if n != r.today {
		which = 1
	}
	if kind == schoolHoliday {
		return r.yes[2+which]
	}
	switch r.holidays.on(n) {
	case Open:
		return true
	case Closed:
		return false
	}
	return r.yes[which]
}
