package draw

import (
	"math"

	"ullage/planner"
	"ullage/planner/trip"
)

func planned(p trip.Level) float64 { return p.L }
func likely(p trip.Level) float64  { return p.Likely }

// hasBand tells whether the band is wide enough to be seen.
func hasBand(s trip.Strip) bool {
	for _, p := range s.Points {
		if p.High-p.Low > 0.01*s.Capacity {
			return true
		}
	}
	return false
}

// LevelAt returns the level of a strip at a time: between two points by
// proportion, at a jump what it jumps to, 0 for a strip without points.
func LevelAt(s trip.Strip, min float64) float64 { return levelAt(s, min, planned) }

// LikelyAt returns the likely level at a time, as [LevelAt]; ok is false for
// a strip without a band.
func LikelyAt(s trip.Strip, min float64) (level float64, ok bool) {
	return levelAt(s, min, likely), hasBand(s)
}

func levelAt(s trip.Strip, min float64, of func(trip.Level) float64) float64 {
	if len(s.Points) == 0 {
		return 0
	}
	i := len(s.Points)
	for i > 0 && s.Points[i-1].Min > min {
		i--
	}
	if i == 0 {
		return of(s.Points[0])
	}
	p := s.Points[i-1]
	if i == len(s.Points) || s.Points[i].Min <= p.Min {
		return of(p)
	}
	q := s.Points[i]
	return of(p) + (of(q)-of(p))*(min-p.Min)/(q.Min-p.Min)
}

// Headroom is what a level leaves before the tank's limit: the level of a
// supply tank, the room left in a waste tank.
func Headroom(s trip.Strip, level float64) float64 {
	if s.Kind == planner.Waste {
		return s.Capacity - level
	}
	return level
}

// Lowest returns the point of least headroom, the first of several; ok is
// false for a strip without points.
func Lowest(s trip.Strip) (p trip.Level, ok bool) {
	least := math.Inf(1)
	for _, q := range s.Points {
		if h := Headroom(s, q.L); h < least {
			least, p, ok = h, q, true
		}
	}
	return p, ok
}
