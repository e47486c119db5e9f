package audit

import (
	"math"

	"ullage/planner"
)

// A gauge follows one tank by its level between the lowest and highest that
// it may show: over the top of a supply tank, or under the bottom of a waste
// tank, use that restores is lost.
type gauge struct {
	planner.Tank
	level float64
	km    float64
}

// use takes headroom, as driving and nights do.
func (g *gauge) use(units float64) {
	if g.Kind == planner.Supply {
		g.level = math.Min(g.level-units, g.Capacity)
	} else {
		g.level = math.Max(g.level+units, 0)
	}
}

func (g *gauge) driveTo(km, detour float64) {
	g.use(g.PerKm * (km - g.km + detour))
	g.km = km
}

// headroom must hold at least want.
func (g *gauge) holds(rule planner.Rule, s *planner.Stop, want float64) error {
	have := g.level
	if g.Kind == planner.Waste {
		have = g.Capacity - g.level
	}
	if have >= want-planner.Tolerance {
		return nil
	}
	b := &planner.Broken{Rule: rule, Tank: g.ID, Km: g.km, Have: have, Need: want}
	if s != nil {
		b.Stop = s.ID
	}
	return b
}
