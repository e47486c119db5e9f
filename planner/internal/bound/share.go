package bound

import "ullage/planner/internal/model"

// This file divides the cost of visits among the groups of the bound. First
// the tank that costs most pays for all its visits, and nights pay for theirs.
// But the bound of a tank stays what it is if its share of a visit is lowered
// by what the best way through that stop costs more than the best of all: so
// much is given to the other groups, stop by stop, what was given before
// taken into account. (A step of dual ascent by min-marginals: Swoboda,
// Kuske, Savchynskyy, "A dual ascent framework for Lagrangean decomposition of
// combinatorial problems", CVPR 2017.)

// shares are in money, by group and stop: first the nights' group, then the single tanks.
type shares struct {
	of     [][]float64
	serves [][]bool // whether the visit is of use to the group
}

func newShares(m *model.Model, worth []float64, atNight, single []int) *shares {
	s := &shares{of: make([][]float64, 1+len(single)), serves: make([][]bool, 1+len(single))}
	for g := range s.of {
		s.of[g], s.serves[g] = make([]float64, len(m.Stops)), make([]bool, len(m.Stops))
	}
	for i := range m.Stops {
		stop := &m.Stops[i]
		visit := visitCost(m, stop, worth)
		for g, w := range firstWeights(m, stop, atNight, single) {
			s.of[g][i] = w * visit
		}
		s.serves[0][i] = stop.Night
		for _, t := range atNight {
			s.serves[0][i] = s.serves[0][i] || stop.Service(t) != nil
		}
		for k, t := range single {
			s.serves[k+1][i] = stop.Service(t) != nil
		}
	}
	return s
}

// gives tells what group g shall give of what it can spare, nil if no other group can use it.
func (s *shares) gives(g int) func(stop int, spare float64) float64 {
	var takers []int // the nights' group, and the tanks whose turn is still to come
	return func(i int, spare float64) float64 {
		takers = takers[:0]
		for h := range s.of {
			if (h == 0 || h > g) && s.serves[h][i] {
				takers = append(takers, h)
			}
		}
		if len(takers) == 0 {
			return 0
		}
		for _, h := range takers {
			s.of[h][i] += spare / float64(len(takers))
		}
		return spare
	}
}

// firstWeights are the shares to begin with, as parts of 1.
func firstWeights(m *model.Model, s *model.Stop, atNight, single []int) []float64 {
	w := make([]float64, 1+len(single))
	if s.Required { // visited in any case: the nights' group sees to it
		w[0] = 1
		return w
	}
	if s.Night {
		w[0]++
	}
	for _, t := range atNight {
		if y := s.Service(t); y != nil && m.Tanks[t].Free {
			w[0]++
		}
	}
	if len(single) > 0 && s.Service(single[0]) != nil {
		w[1] = 1
	}
	sum := 0.0
	for _, x := range w {
		sum += x
	}
	for k := 1; k <= len(single) && sum == 0; k++ {
		if s.Service(single[k-1]) != nil {
			w[k], sum = 1, 1
		}
	}
	if sum == 0 {
		w[0], sum = 1, 1
	}
	for k := range w {
		w[k] /= sum
	}
	return w
}
