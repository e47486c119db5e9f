package build

import (
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// Tanks are those of the problem, and what was done about them.
type Tanks struct {
	List   []planner.Tank
	Weight *trip.Weight // nil: not known
	Mass   *planner.Mass
	Notes  []fact.Fact
}

// Kinds of what is said of a tank as the trip begins.
const (
	belowReserve fact.Kind = "start.below_reserve"
	atReserve    fact.Kind = "start.at_reserve"
	gasStuck     fact.Kind = "start.gas_stuck"
)

// tanks is the second stage: the problem's tanks. A tank that sets off below its reserve
// would refuse every plan; its reserve is halved down to what there is, and
// the trip carries a caution.
//
// On the road it may also give way by what a gauge does not show.
func (c *Course) tanks() Tanks {
	b := Tanks{Weight: weigh(c.Trip), Mass: mass(c.Trip)}
	waste := b.waste(c.Trip)
	for _, k := range c.Trip.Vehicle.Tanks {
		room := k.Capacity
		level := min(c.Trip.LevelOf(k), room)
		if kg := b.per(k.ID); kg > 0 && k.Kind == planner.Supply {
			level = max(0, min(level, (b.Mass.Most-waste)/kg))
		}
		reserve, headroom := min(max(k.Reserve, b.stuck(c, k)), room), level
		if k.Kind == planner.Waste {
			headroom = room - level
		}
		of := fact.V{"tank": k.Called(), "supply": {}}
		if k.Kind == planner.Supply {
			of["supply"] = fact.Text(string(k.Kind))
		}
		if headroom < reserve {
			reserve = headroom / 2
			b.Notes = append(b.Notes, fact.Of(belowReserve, of))
		} else if least := headroom - unseen*k.Capacity; c.Trip.DoneKm > 0 && least < reserve {
			// A plan may well arrive at the place that helps with nothing but the
			// reserve: going on from just before it must not fail by a spoonful.
			reserve = max(least, reserve/2)
			b.Notes = append(b.Notes, fact.Of(atReserve, of))
		}
		b.List = append(b.List, planner.Tank{
			ID: k.ID, Name: k.Name, Unit: k.Unit, Kind: k.Kind, Capacity: room, Reserve: reserve, Start: level, PerKm: c.Use.PerKm(k).High, End: k.End})
	}
	return b
}

// unseen is the share of a tank that no gauge in a vehicle shows (common
// practice, no source).
const unseen = 0.02

// per is the mass of a unit in a tank that a limit weighs, else 0.
func (b *Tanks) per(tank string) float64 {
	if b.Mass == nil {
		return 0
	}
	return b.Mass.Per[tank]
}

// waste is the mass of what is in waste tanks as the trip begins. On the road that
// cannot be helped before the next place that takes it: so much may be driven with.
func (b *Tanks) waste(t trip.Trip) float64 {
	if b.Mass == nil {
		return 0
	}
	kg, water := 0.0, 0.0
	for _, k := range t.Vehicle.Tanks {
		if k.Kind == planner.Waste {
			kg += b.Mass.Per[k.ID] * t.LevelOf(k)
		} else {
			water += b.Mass.Per[k.ID] * min(k.Reserve, t.LevelOf(k))
		}
	}
	if t.DoneKm > 0 {
		b.Mass.Most = max(b.Mass.Most, kg+water)
	}
	return kg
}

// stuck is how much of a full tank does not come out where the trip is coldest:
// at its ends, and at the quarters between.
func (b *Tanks) stuck(c *Course, k trip.Tank) float64 {
	if !c.Use.Lives {
		return 0
	}
	most, n := 0.0, len(c.Trip.Route)-1
	for i := range 5 {
		p := c.Trip.Route[i*n/4]
		air := c.Use.Stay(nil, life.Where{Lat: p.Lat(), Lon: p.Lon()}, c.Axis.LengthKm*float64(i)/4).Air
		most = max(most, c.Use.Model.Vehicle.Stuck(air)[k.ID])
	}
	if most > 0.01 {
		b.Notes = append(b.Notes, fact.Of(gasStuck, fact.V{"tank": k.Called(), "part": fact.Share(most, 0)}))
	}
	return most * k.Capacity
}
