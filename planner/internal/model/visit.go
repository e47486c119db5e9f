package model

import "math"

// This file moves a state along: to a stop, through what is done there, and
// to the end of the trip.

// Arrive drives from stop from (−1: the start) to stop i. It reports whether
// that is possible.
func (m *Model) Arrive(s *State, from, i int) bool {
	x := &m.Stops[i]
	km, at := m.Position(from)
	s.Km += x.Km - km + x.Half
	s.Min += x.At - at + x.HalfMin
	if s.Km > m.MaxKm+Slack || s.Min > m.MaxMin+Slack {
		return false
	}
	for t := range m.Tanks {
		if !m.look(s, t, x.Km, x.Half, m.Tanks[t].Reserve) {
			return false
		}
	}
	s.Cost += x.Fixed
	return true
}

// look drives extra km beside the route and checks the headroom at km.
func (m *Model) look(s *State, t int, km, extra, want float64) bool {
	x := &m.Tanks[t]
	s.Hand[t] -= x.PerKm * extra
	if x.PerKm < 0 {
		s.spill(t, s.Hand[t]-x.PerKm*km, x.Cap)
	}
	return s.hold(t, x.PerKm, km, want)
}

// wait lets time pass until the stop is open. It reports whether it still is.
func (m *Model) wait(s *State, x *Stop) bool {
	now := m.clock(s)
	wait := opening(x.open, now) - now
	s.Min += wait + x.StopMin
	s.Cost += m.Money * wait
	return s.Min <= m.MaxMin+Slack
}

// checkIn reports whether the night can be spent at the stop. Time until then is in hand.
func (m *Model) checkIn(s *State, x *Stop) bool {
	if s.Min+x.StopMin > m.MaxMin+Slack || x.Km-s.Slept < m.MoveKm-Slack || s.Nights+x.Nights > m.Most {
		return false
	}
	latest := 1440 * float64(x.Nights)
	if x.checkIn != nil {
		latest = 1440
	}
	now := m.clock(s)
	return s.Min+x.arrival(now)-now+x.StopMin <= latest+Slack && !m.Problem.Drive.Rests(s.Nights+x.Nights)
}

// clock is minutes since 00:00 of day one.
func (m *Model) clock(s *State) float64 { return m.depart + 1440*float64(s.Nights) + s.Min }

// arrival is the first minute from now on in which one can arrive for the night;
// +Inf if there is none.
func (x *Stop) arrival(now float64) float64 {
	for {
		now = opening(x.open, now)
		if x.checkIn == nil || math.IsInf(now, 1) {
			return now
		}
		switch day := 1440 * math.Floor(now/1440); {
		case now < day+x.checkIn[0]:
			now = day + x.checkIn[0]
		case now > day+x.checkIn[1]+Slack:
			now = day + 1440 + x.checkIn[0]
		default:
			return now
		}
	}
}

// opening is the first minute from now on within a window; +Inf if there is none.
func opening(open [][2]float64, now float64) float64 {
	for _, w := range open {
		if now <= w[1]+Slack {
			return Greater(now, w[0])
		}
	}
	if len(open) == 0 {
		return now
	}
	return math.Inf(1)
}

// A Deed is what is done at a stop.
type Deed struct {
	Night bool
	Take  uint32 // bit k: service k is taken
}

// Stay does what is to be done at stop i and drives back to the route. False
// if it cannot be, or would be of no use.
func (m *Model) Stay(s *State, i int, done Deed) bool {
	x, night, take := &m.Stops[i], done.Night, done.Take
	if night && (take&x.Barred != 0 || !m.checkIn(s, x)) || !night && !m.wait(s, x) {
		return false
	}
	taken := uint32(0) // tanks
	for k := range x.Serves {
		if take&(1<<k) == 0 {
			continue
		}
		y := &x.Serves[k]
		taken |= 1 << y.Tank
		s.Cost += y.Fixed
		if night {
			s.Cost += y.More
		} else {
			s.Min += y.min
		}
		if !s.hold(y.Tank, m.Tanks[y.Tank].PerKm, x.Km, y.Spare) {
			return false
		}
		useful := m.serve(s, y, x, done)
		if !useful && x.Branches&(1<<k) != 0 {
			return false
		}
	}
	if night {
		for t := range m.Tanks {
			if taken&(1<<t) == 0 && x.Use[t] != 0 {
				s.Hand[t] -= x.Use[t]
				if x.Use[t] < 0 {
					s.spill(t, s.Hand[t]-m.Tanks[t].PerKm*x.Km, m.Tanks[t].Cap)
				}
			}
		}
		s.Nights += x.Nights
		s.Cost += x.NightFee
		s.Km, s.Min, s.Slept = 0, 0, x.Km
	}
	if night || !x.Night {
		s.Lists |= x.Lists
	}
	if m.per != nil && !m.lighten(s, x) {
		return false
	}
	for t := range m.Tanks {
		if !s.hold(t, m.Tanks[t].PerKm, x.Km, m.Tanks[t].Reserve) ||
			!m.look(s, t, x.Km, x.Half, m.Tanks[t].Reserve) {
			return false
		}
	}
	s.Km += x.Half
	s.Min += x.HalfMin
	s.Visits++
	s.Cost += PerVisit
	return s.Km <= m.MaxKm+Slack && s.Min <= m.MaxMin+Slack
}

// serve restores one tank; at a night the night's use comes first, because
// service is taken at any time during the stay. It reports whether anything
// could go in or out.
func (m *Model) serve(s *State, y *Service, x *Stop, done Deed) bool {
	t := y.Tank
	tank := &m.Tanks[t]
	if done.Night {
		s.Hand[t] -= x.Use[t]
	}
	headroom := s.Hand[t] - tank.PerKm*x.Km
	if tank.Waste {
		s.Hand[t] += tank.Cap - headroom
		return headroom < tank.Cap-Slack
	}
	useful := s.offer(t, headroom, tank.Cap, y.Price)
	if done.Night && x.Use[t] < 0 {
		s.spill(t, s.Hand[t]-tank.PerKm*x.Km, tank.Cap)
	}
	return useful
}

// lighten lets out of its supply tank what is too heavy to drive on with. It reports
// whether that is enough.
func (m *Model) lighten(s *State, x *Stop) bool {
	over := -m.mostMass
	for t, per := range m.per {
		if per > 0 {
			level := s.Hand[t] - m.Tanks[t].PerKm*x.Km
			if m.Tanks[t].Waste {
				level = m.Tanks[t].Cap - level
			}
			over += per * level
		}
	}
	if over <= 0 {
		return true
	}
	if m.supply < 0 {
		return over <= Slack
	}
	s.Hand[m.supply] -= over / m.per[m.supply]
	return true
}

// Finish drives from stop from to the end of the route and settles the end
// conditions. It reports whether that makes a valid trip.
func (m *Model) Finish(s *State, from int) bool {
	km, at := m.Position(from)
	s.Km += m.Length - km
	s.Min += m.EndMin - at
	if s.Km > m.MaxKm+Slack || s.Min > m.LastMin+Slack || s.Nights < m.Least || s.Nights > m.Most || s.Lists != m.Lists {
		return false
	}
	for t := range m.Tanks {
		x := &m.Tanks[t]
		if !m.look(s, t, m.Length, 0, x.Reserve) {
			return false
		}
		headroom := s.Hand[t] - x.PerKm*m.Length
		if x.Refill >= 0 {
			short := x.End - headroom - s.Unpaid(t)
			for n := len(s.Layers[t]); n > 0 && s.Layers[t][n-1].Price >= x.Refill; n-- {
				short += s.Layers[t][n-1].Amount
				s.Layers[t] = s.Layers[t][:n-1]
			}
			if short > 0 {
				s.Cost += short * x.Refill
			}
			s.hold(t, x.PerKm, m.Length, x.End-max(short, 0))
			continue
		}
		if !s.hold(t, x.PerKm, m.Length, x.End) {
			return false
		}
	}
	return true
}
