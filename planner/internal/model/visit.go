package model

// This file moves a state along: to a stop, through what is done there, and
// to the end of the trip.

// Arrive drives from stop from (−1: the start) to stop i and waits for it to
// open. It reports whether that is possible.
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
	wait, open := x.waiting(m.depart + 1440*float64(s.Nights) + s.Min)
	s.Min += wait + x.StopMin
	s.Cost += x.Fixed + m.Money*wait
	return open && s.Min <= m.MaxMin+Slack
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

// waiting is the minutes from now until the stop is open; false if it never is again.
func (x *Stop) waiting(now float64) (float64, bool) {
	for _, w := range x.open {
		if now <= w[1]+Slack {
			return max(0, w[0]-now), true
		}
	}
	return 0, len(x.open) == 0
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
	if night && (s.Min > 1440*float64(x.Nights)+Slack || s.Nights+x.Nights > m.Most) {
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
		if !night {
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
		s.Km, s.Min = 0, 0
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

// Finish drives from stop from to the end of the route and settles the end
// conditions. It reports whether that makes a valid trip.
func (m *Model) Finish(s *State, from int) bool {
	km, at := m.Position(from)
	s.Km += m.Length - km
	s.Min += m.EndMin - at
	if s.Km > m.MaxKm+Slack || s.Min > m.MaxMin+Slack || s.Nights < m.Least || s.Nights > m.Most {
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
