package build

import (
	"ullage/planner/life"
	"ullage/planner/trip"
)

// water is the tank that a heavy vehicle drives with less of: the one supply
// that can be filled where it is used.
const water = "fresh"

// carried is where the scales look for the contents of a tank.
var carried = map[string]func(*life.Levels) *float64{
	"diesel": func(l *life.Levels) *float64 { return &l.Diesel }, "def": func(l *life.Levels) *float64 { return &l.DEF },
	"lpg": func(l *life.Levels) *float64 { return &l.LPG }, "fresh": func(l *life.Levels) *float64 { return &l.Fresh },
	"grey": func(l *life.Levels) *float64 { return &l.Grey }, "cassette": func(l *life.Levels) *float64 { return &l.Cassette },
}

// weigh puts the trip on the scales; nil where the vehicle's empty mass is not known.
func weigh(t trip.Trip) *trip.Weight {
	v := t.Vehicle
	if v.EmptyKg == 0 {
		return nil
	}
	l := life.Load{AllowedKg: v.MassKg, EmptyKg: v.EmptyKg, Adults: t.Party.Adults, Children: t.Party.Children, GearKg: t.GearKg}
	if l.GearKg == 0 {
		l.GearKg = life.UsualGearKg(life.Party{Adults: t.Party.Adults, Children: t.Party.Children}, v.LengthM)
	}
	full, capacity := l, 0.0
	for _, k := range v.Tanks {
		at, ok := carried[k.ID]
		if !ok {
			continue
		}
		level := t.LevelOf(k)
		*at(&l.Levels), *at(&full.Levels) = level, level
		switch {
		case k.ID == water:
			capacity = k.Capacity
		case k.Kind == "supply":
			*at(&full.Levels) = k.Capacity
		}
	}
	w := &trip.Weight{Kg: l.Kg(), AllowedKg: v.MassKg, FreshL: full.MaxFreshL(capacity)}
	if w.Text = l.Warning(capacity); w.Text == "" {
		w.Text = full.Warning(capacity)
	}
	return w
}

// room is the most that a tank may hold while driving: its capacity, or what
// the mass allows. A vehicle that is too heavy even with the water that everybody
// drives with is not helped by less of it: then the warning has to do.
func (b *Built) room(k trip.Tank) float64 {
	if w := b.Weight; w != nil && k.ID == water && w.FreshL >= life.TravelWaterL {
		return min(k.Capacity, w.FreshL)
	}
	return k.Capacity
}
