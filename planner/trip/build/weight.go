package build

import (
	"ullage/planner"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// laden is the vehicle with people and gear, and all tanks empty.
func laden(t trip.Trip) life.Load {
	l := life.Load{AllowedKg: t.Vehicle.MassKg, EmptyKg: t.Vehicle.EmptyKg, Adults: t.Party.Adults, Children: t.Party.Children, GearKg: t.GearKg}
	if l.GearKg == 0 {
		l.GearKg = life.UsualGearKg(life.Party{Adults: t.Party.Adults, Children: t.Party.Children}, t.Vehicle.LengthM)
	}
	return l
}

// weigh puts the trip on the scales; nil where the vehicle's empty mass is not known.
func weigh(t trip.Trip) *trip.Weight {
	v := t.Vehicle
	if v.EmptyKg == 0 {
		return nil
	}
	l := laden(t)
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

// mass is what may be aboard at a departure in tanks that a journey fills and empties
// on its way: water that can be filled where it is used, and waste. What is bought
// counts as full, so that it never has to be weighed up against water. nil where the
// vehicle's empty mass is not known.
func mass(t trip.Trip) *planner.Mass {
	v := t.Vehicle
	if v.EmptyKg == 0 {
		return nil
	}
	l := laden(t)
	m := &planner.Mass{Per: map[string]float64{}}
	for _, k := range v.Tanks {
		switch kg := life.KgPer(k.ID); {
		case kg == 0:
		case k.Kind == planner.Waste || trip.KindOfTank(k.ID).Onboard:
			m.Per[k.ID] = kg
		default:
			l.Levels = append(l.Levels, life.Content{Tank: k.ID, Level: k.Capacity})
		}
	}
	m.Most = l.SpareKg()
	return m
}
