package hours

// A Schedule is a text that has been read. It may be used by several
// goroutines at once.
type Schedule struct {
	rules         []rule
	holidays, sun bool // whether any rule mentions them
}

// mentions says whether a rule speaks of such holidays.
func (s *Schedule) mentions(kind holidayKind) bool {
	for i := range s.rules {
		for _, d := range s.rules[i].days {
			if d.holiday == kind {
				return true
			}
		}
	}
	return false
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
