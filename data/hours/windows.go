package hours

import "time"

// Windows returns when the place is certainly open during the days that start
// with the date of from: [from, to) in minutes since 00:00 of that date, local
// time, in order, merged, cut at the end of the last day. known is false if at
// some moment of these days the state is unknown; the windows are right all
// the same. It may be called on nil, which knows nothing.
//
// The zone of from is that of the place; it matters for the sun only. If it is
// UTC, the zone is taken as unknown, from one hour behind to three hours ahead
// of the sun's. Cost about 10 µs for 21 days; to find the country costs as much
// again.
func (s *Schedule) Windows(from time.Time, days int, at Where) (windows [][2]float64, known bool) {
	if s == nil {
		return nil, false
	}
	known = true
	periods := s.Periods(from, days, at)
	windows = make([][2]float64, 0, len(periods)/2+1)
	for _, p := range periods {
		switch p.State {
		case Open:
			windows = append(windows, [2]float64{float64(p.From), float64(p.To)})
		case Unknown:
			known = false
		}
	}
	if len(windows) == 0 {
		return nil, known
	}
	return windows, known
}

// Periods returns the states of the days that start with the date of from,
// without a gap, neighbours in different states. See [Schedule.Windows].
func (s *Schedule) Periods(from time.Time, days int, at Where) []Period {
	e := newEvaluator(s, from, at)
	all := make([]Period, 0, 4*max(days, 0))
	for day := range days {
		start := day * dayMin
		for _, p := range e.day(e.first + day) {
			if n := len(all); n > 0 && all[n-1].State == p.State {
				all[n-1].To = start + p.To
			} else {
				all = append(all, Period{start + p.From, start + p.To, p.State})
			}
		}
	}
	return all
}
