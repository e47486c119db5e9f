package planner

// This file moves a state along: to a stop, through what is done there, and
// to the end of the trip.

// arrive drives from stop from (−1: the start) to stop i and waits for it to
// open. It reports whether that is possible.
func (m *model) arrive(s *state, from, i int) bool {
	x := &m.stops[i]
	km, at := m.position(from)
	s.km += x.km - km + x.half
	s.min += x.at - at + x.halfMin
	if s.km > m.maxKm+slack || s.min > m.maxMin+slack {
		return false
	}
	for t := range m.tanks {
		if !m.look(s, t, x.km, x.half, m.tanks[t].reserve) {
			return false
		}
	}
	wait, open := x.waiting(m.depart + 1440*float64(s.nights) + s.min)
	s.min += wait + x.stopMin
	s.cost += x.fixed + m.money*wait
	return open && s.min <= m.maxMin+slack
}

func (m *model) position(stop int) (km, at float64) {
	if stop < 0 {
		return 0, 0
	}
	return m.stops[stop].km, m.stops[stop].at
}

// look drives extra km beside the route and checks the headroom at km.
func (m *model) look(s *state, t int, km, extra, want float64) bool {
	x := &m.tanks[t]
	s.hand[t] -= x.perKm * extra
	if x.perKm < 0 {
		s.spill(t, s.hand[t]-x.perKm*km, x.cap)
	}
	return s.hold(t, x.perKm, km, want)
}

// waiting is the minutes from now until the stop is open; false if it never is again.
func (x *stopModel) waiting(now float64) (float64, bool) {
	for _, w := range x.open {
		if now <= w[1]+slack {
			return max(0, w[0]-now), true
		}
	}
	return 0, len(x.open) == 0
}

// stay does what is to be done at stop i and drives back to the route. Bit k
// of take is service k. False if it cannot be, or would be of no use.
func (m *model) stay(s *state, i int, night bool, take uint32) bool {
	x := &m.stops[i]
	if night && (s.min > 1440*float64(x.nights)+slack || s.nights+x.nights > m.most) {
		return false
	}
	taken := uint32(0) // tanks
	for k := range x.serves {
		if take&(1<<k) == 0 {
			continue
		}
		y := &x.serves[k]
		taken |= 1 << y.tank
		s.cost += y.fixed
		if !night {
			s.min += y.min
		}
		if !s.hold(y.tank, m.tanks[y.tank].perKm, x.km, y.spare) {
			return false
		}
		useful := m.serve(s, y, x, night)
		if !useful && x.branches&(1<<k) != 0 {
			return false
		}
	}
	if night {
		for t := range m.tanks {
			if taken&(1<<t) == 0 && x.use[t] != 0 {
				s.hand[t] -= x.use[t]
				if x.use[t] < 0 {
					s.spill(t, s.hand[t]-m.tanks[t].perKm*x.km, m.tanks[t].cap)
				}
			}
		}
		s.nights += x.nights
		s.cost += x.nightFee
		s.km, s.min = 0, 0
	}
	for t := range m.tanks {
		if !s.hold(t, m.tanks[t].perKm, x.km, m.tanks[t].reserve) ||
			!m.look(s, t, x.km, x.half, m.tanks[t].reserve) {
			return false
		}
	}
	s.km += x.half
	s.min += x.halfMin
	s.visits++
	s.cost += perVisit
	return s.km <= m.maxKm+slack && s.min <= m.maxMin+slack
}

// serve restores one tank; at a night the night's use comes first, because
// service is taken at any time during the stay. It reports whether anything
// could go in or out.
func (m *model) serve(s *state, y *serviceModel, x *stopModel, night bool) bool {
	t := y.tank
	tank := &m.tanks[t]
	if night {
		s.hand[t] -= x.use[t]
	}
	headroom := s.hand[t] - tank.perKm*x.km
	if tank.waste {
		s.hand[t] += tank.cap - headroom
		return headroom < tank.cap-slack
	}
	useful := s.offer(t, headroom, tank.cap, y.price)
	if night && x.use[t] < 0 {
		s.spill(t, s.hand[t]-tank.perKm*x.km, tank.cap)
	}
	return useful
}

// finish drives from stop from to the end of the route and settles the end
// conditions. It reports whether that makes a valid trip.
func (m *model) finish(s *state, from int) bool {
	km, at := m.position(from)
	s.km += m.length - km
	s.min += m.endMin - at
	if s.km > m.maxKm+slack || s.min > m.maxMin+slack || s.nights < m.least || s.nights > m.most {
		return false
	}
	for t := range m.tanks {
		x := &m.tanks[t]
		if !m.look(s, t, m.length, 0, x.reserve) {
			return false
		}
		headroom := s.hand[t] - x.perKm*m.length
		if x.refill >= 0 {
			short := x.end - headroom - s.unpaid(t)
			for n := len(s.layers[t]); n > 0 && s.layers[t][n-1].price >= x.refill; n-- {
				short += s.layers[t][n-1].amount
				s.layers[t] = s.layers[t][:n-1]
			}
			if short > 0 {
				s.cost += short * x.refill
			}
			s.hold(t, x.perKm, m.length, x.end-max(short, 0))
			continue
		}
		if !s.hold(t, x.perKm, m.length, x.end) {
			return false
		}
	}
	return true
}
