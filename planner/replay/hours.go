package replay

import (
	"math"

	"ullage/planner"
)

// This file finds when a stop is open, and when one can arrive for the night.

// opening is the first minute from now on within a window, +Inf if there is none.
func opening(open [][2]float64, now float64) float64 {
	for _, w := range open {
		if now <= w[1]+planner.Tolerance {
			return max(now, w[0])
		}
	}
	if len(open) == 0 {
		return now
	}
	return math.Inf(1)
}

func shut(s *planner.Stop, now float64) error {
	last := now
	if n := len(s.Open); n > 0 {
		last = s.Open[n-1][1]
	}
	return &planner.Broken{Rule: planner.RuleOpen, Stop: s.ID, Km: s.Km, Have: now, Need: last}
}

// checkIn is the first minute from now on in which one can arrive for the night.
func checkIn(s *planner.Stop, now float64) float64 {
	for in := s.Night.CheckIn; ; {
		now = opening(s.Open, now)
		if in == nil || math.IsInf(now, 1) {
			return now
		}
		switch day := 1440 * math.Floor(now/1440); {
		case now < day+in[0]:
			now = day + in[0]
		case now > day+in[1]+planner.Tolerance:
			now = day + 1440 + in[0]
		default:
			return now
		}
	}
}
