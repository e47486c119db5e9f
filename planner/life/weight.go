package life

import (
	"ullage/planner/fact"
)

// Masses of what is carried.
const (
	waterKgL  = 1.0
	dieselKgL = 0.84 // EN 590: 0.820–0.845 at 15 °C (ncheurope.com)
	defKgL    = 1.09 // 1.087–1.093 at 20 °C (ISO 22241; de.zxc.wiki)

	// AdultKg counts for driver and passengers in the mass of vehicles (EU
	// 1230/2012, from memory); a child from memory.
	AdultKg, ChildKg = 75.0, 40.0
	// GearPersonKg and GearMetreKg: personal things by EN 1646-2, 10 kg a person
	// and 10 kg a metre of length; from memory.
	GearPersonKg, GearMetreKg = 10.0, 10.0

	// TravelWaterL is what is kept on board for the road: 10–20 L for mass, from memory.
	TravelWaterL = 20.0
)

// A Load is a vehicle on the scales. EmptyKg is without people, gear and
// liquids.
type Load struct {
	AllowedKg float64 // on the plate
	EmptyKg   float64
	Adults    int
	Children  int
	GearKg    float64 // bicycles, chairs, food, clothes
	Levels    Levels
}

// Levels are litres in the tanks; LPG litres of liquid.
type Levels struct{ Diesel, DEF, LPG, Fresh, Grey, Cassette float64 }

// UsualGearKg of a party in a vehicle, bicycles apart.
func UsualGearKg(p Party, lengthM float64) float64 {
	return GearPersonKg*float64(p.Adults+p.Children) + GearMetreKg*lengthM
}

// Kg is what the scales show.
func (l Load) Kg() float64 {
	v := l.Levels
	return l.EmptyKg + AdultKg*float64(l.Adults) + ChildKg*float64(l.Children) + l.GearKg +
		dieselKgL*v.Diesel + defKgL*v.DEF + propaneKgL*v.LPG + waterKgL*(v.Fresh+v.Grey+v.Cassette)
}

// SpareKg is what may still come on board; negative: too heavy.
func (l Load) SpareKg() float64 { return l.AllowedKg - l.Kg() }

// MaxFreshL is the most fresh water for driving, with everything else as it is
// and at most capacity; 0 where the vehicle is too heavy even without.
func (l Load) MaxFreshL(capacity float64) float64 {
	return min(max(l.SpareKg()/waterKgL+l.Levels.Fresh, 0), max(capacity, 0))
}

// Kinds of what is said of a load.
const (
	HeavyWithout fact.Kind = "weight.without" // too heavy even with the tank empty
	HeavyWith    fact.Kind = "weight.with"    // too heavy with what the tank holds
	HeavyFull    fact.Kind = "weight.full"    // too heavy if the tank were full
)

// Says is that the vehicle is too heavy, or how much of a tank it may be driven
// with; nothing where the full tank fits too. A weighbridge tells the truth.
func (l Load) Says(tank string, capacity float64) fact.Fact {
	most := fact.Quantity(l.MaxFreshL(capacity), "L", 0)
	which, allowed := fact.Tank(tank, ""), fact.Kg(l.AllowedKg)
	rest := l
	rest.Levels.Fresh = 0
	over, dry := -l.SpareKg(), -rest.SpareKg()
	switch {
	case dry > 0:
		return fact.Of(HeavyWithout, fact.V{"over": fact.Kg(dry), "tank": which, "allowed": allowed})
	case over > 0:
		return fact.Of(HeavyWith, fact.V{"over": fact.Kg(over), "most": most, "tank": which, "allowed": allowed})
	case most.N < capacity:
		return fact.Of(HeavyFull, fact.V{"most": most, "tank": which})
	}
	return fact.Fact{}
}
