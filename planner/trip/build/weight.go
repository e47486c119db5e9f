package build

import (
	"ullage/planner"
	"ullage/planner/life"
	"ullage/planner/trip"
)

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
	full, water := l, trip.Tank{}
	for _, k := range v.Tanks {
		now := life.Content{Tank: k.ID, Level: t.LevelOf(k)}
		later := now
		switch {
		case trip.KindOfTank(k.ID).Onboard:
			water = k
		case k.Kind == planner.Supply:
			later.Level = k.Capacity
		}
		l.Levels, full.Levels = append(l.Levels, now), append(full.Levels, later)
	}
	w := &trip.Weight{Kg: l.Kg(), AllowedKg: v.MassKg, FreshL: full.Most(water.ID, water.Capacity)}
	if w.Says = l.Says(water.ID, water.Capacity); w.Says.Nothing() {
		w.Says = full.Says(water.ID, water.Capacity)
	}
	return w
}
