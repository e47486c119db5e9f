package model

import "math"

// LeastNights is what the route and the trip force at least.
func (m *Model) LeastNights() int {
	n := 0
	if m.MaxKm > 0 {
		n = int(math.Ceil(m.Length/m.MaxKm-1e-9)) - 1
	}
	return max(n, m.Least, 0)
}

func (m *Model) Position(stop int) (km, at float64) {
	if stop < 0 {
		return 0, 0
	}
	return m.Stops[stop].Km, m.Stops[stop].At
}

func (m *Model) UsedAtNight(t int) bool {
	for i := range m.Stops {
		if s := &m.Stops[i]; s.Night && s.Use[t] != 0 {
			return true
		}
	}
	return false
}

// Restores says whether some night restores the tank.
func (m *Model) Restores(t int) bool {
	for i := range m.Stops {
		if s := &m.Stops[i]; s.Night && s.Use[t] < 0 {
			return true
		}
	}
	return false
}

// CheapestPrice of a unit of the tank, refill at the end included; 0 if none is sold.
func (m *Model) CheapestPrice(t int) float64 {
	price := math.Inf(1)
	for i := range m.Stops {
		if y := m.Stops[i].Service(t); y != nil {
			price = min(price, y.Price)
		}
	}
	if r := m.Tanks[t].Refill; r >= 0 {
		price = min(price, r)
	}
	if math.IsInf(price, 1) {
		return 0
	}
	return price
}

// Served says whether any stop serves the tank.
func (m *Model) Served(t int) bool {
	for i := range m.Stops {
		if m.Stops[i].Service(t) != nil {
			return true
		}
	}
	return false
}

// ByNights says whether the number of nights so far makes a difference: if so
// many are wanted, if places are closed at times, or if there are days without driving.
func (m *Model) ByNights() bool { return m.Least > 0 || m.Opens[0] || m.Rests() }

// Rests says whether there are days without driving.
func (m *Model) Rests() bool { return len(m.Problem.Drive.RestDays) > 0 }
