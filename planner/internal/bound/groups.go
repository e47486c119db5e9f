package bound

import (
	"slices"

	"ullage/planner/internal/model"
)

// singleTanks are the tanks that are solved alone, the one whose use costs most first.
func singleTanks(m *model.Model) []int {
	var out []int
	for t := range m.Tanks {
		if m.Tanks[t].PerKm < 0 || m.Restores(t) {
			continue
		}
		if m.Tanks[t].PerKm > 0 || !m.UsedAtNight(t) {
			out = append(out, t)
		}
	}
	if k := slices.Index(out, mainTank(m, out)); k > 0 {
		out[0], out[k] = out[k], out[0]
	}
	return out
}

// mainTank is the tank whose use costs most on the whole route.
func mainTank(m *model.Model, single []int) int {
	best, most := -1, -1.0
	for _, t := range single {
		if w := m.CheapestPrice(t) * m.Tanks[t].PerKm; w > most {
			best, most = t, w
		}
	}
	return best
}

// visitCost is what any visit of the stop costs, with the worth of what the detour uses.
func visitCost(m *model.Model, s *model.Stop, worth []float64) float64 {
	c := s.Fixed
	for t, w := range worth {
		c += w * 2 * s.Half * m.Tanks[t].PerKm
	}
	return c
}

// Worths are the multipliers: the cheapest price of tanks that must be bought
// for, 0 for others.
func Worths(m *model.Model) []float64 {
	w := make([]float64, len(m.Tanks))
	for t := range m.Tanks {
		x := &m.Tanks[t]
		if x.Free || x.PerKm < 0 || m.Restores(t) {
			continue
		}
		if x.End-x.Start+x.PerKm*m.Length > 0 {
			w[t] = m.CheapestPrice(t)
		}
	}
	return w
}

// BindingTanks are the tanks that nights use, that driving does not use but may
// restore, and that can run out.
func BindingTanks(m *model.Model) []int {
	var out []int
	for t := range m.Tanks {
		x := &m.Tanks[t]
		if x.PerKm > 0 || x.PerKm < 0 && !x.Free { // of the latter, what is in hand is not yet decided
			continue
		}
		use := 0.0 // a night
		for i := range m.Stops {
			if s := &m.Stops[i]; s.Night {
				use = max(use, s.Use[t]/float64(s.Nights))
			}
		}
		if use > 0 && x.Start-float64(min(m.LeastNights()+2, m.Most))*use < x.End {
			out = append(out, t)
		}
	}
	return out
}

// Payable is the cheapest price of a tank that may have to be bought for, else 0.
func Payable(m *model.Model, t int) float64 {
	if m.Tanks[t].Free || m.Restores(t) {
		return 0
	}
	return m.CheapestPrice(t)
}

// PayableWorths are the worths with the price of each of these tanks that may
// have to be bought for.
func PayableWorths(m *model.Model, tanks []int) []float64 {
	worth := Worths(m)
	for _, t := range tanks {
		worth[t] = Payable(m, t)
	}
	return worth
}
