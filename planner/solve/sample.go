package solve

import (
	"ullage/planner"
	"ullage/planner/internal/model"
)

// This file finds a plan where there are so many stops that whole sweeps take
// their time: among a few of them.

// crowd is how many stops are too many for a plan at once.
const crowd = 2000

// sample is the problem with some of its stops, half a crowd at most and those
// required: of every stretch those where a night, a tank served, or a night that
// spares a tank costs least. A plan of it is one of the whole, and quickly found;
// that it has none proves nothing.
func sample(m *model.Model) *planner.Problem {
	wants := 1 + 2*len(m.Tanks)
	stretch := m.Length * float64(2*wants) / crowd
	keep := make([]bool, len(m.Stops))
	best, least := make([]int, wants), make([]float64, wants) // of the stretch, by what is wanted
	clear := func() {
		for k := range best {
			best[k] = -1
		}
	}
	clear()
	take := func() {
		for _, i := range best {
			if i >= 0 {
				keep[i] = true
			}
		}
		clear()
	}
	end := stretch
	for i := range m.Stops {
		s := &m.Stops[i]
		for ; s.Km >= end; end += stretch {
			take()
		}
		offer := func(k int, cost float64) {
			if best[k] < 0 || cost < least[k] {
				best[k], least[k] = i, cost
			}
		}
		keep[i] = s.Required || s.Lists != 0
		for _, y := range s.Serves {
			offer(1+y.Tank, s.Fixed+y.Fixed+y.Price*m.Tanks[y.Tank].Cap)
		}
		if s.Night {
			offer(0, (s.Fixed+s.NightFee)/float64(s.Nights))
			for t, use := range s.Use {
				offer(1+len(m.Tanks)+t, use/float64(s.Nights))
			}
		}
	}
	take()
	p := *m.Problem
	p.Stops = nil
	for i, s := range m.Problem.Stops {
		if keep[i] {
			p.Stops = append(p.Stops, s)
		}
	}
	return &p
}
