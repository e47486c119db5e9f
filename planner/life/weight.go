package life

import "ullage/planner/fact"

// kgPer is the mass of a unit of what a tank holds; a tank without one weighs nothing more when full.
var kgPer = map[string]float64{
	"diesel":   0.84,       // EN 590: 0.820–0.845 at 15 °C (ncheurope.com)
	"def":      1.09,       // 1.087–1.093 at 20 °C (ISO 22241; de.zxc.wiki)
	"lpg":      propaneKgL, // litres of liquid
	"fresh":    1,
	"grey":     1,
	"cassette": 1,
}

// KgPer is the mass of a unit of what a tank holds; 0 for one that weighs nothing more when full.
func KgPer(tank string) float64 { return kgPer[tank] }

// Masses of what is carried.
const (
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
	Levels    []Content
}

// A Content is what one tank holds.
type Content struct {
	Tank  string
	Level float64 // litres; LPG litres of liquid
}

// UsualGearKg of a party in a vehicle, bicycles apart.
func UsualGearKg(p Party, lengthM float64) float64 {
	return GearPersonKg*float64(p.Adults+p.Children) + GearMetreKg*lengthM
}

// Kg is what the scales show.
func (l Load) Kg() float64 {
	kg := l.EmptyKg + AdultKg*float64(l.Adults) + ChildKg*float64(l.Children) + l.GearKg
	for _, c := range l.Levels {
		kg += kgPer[c.Tank] * c.Level
	}
	return kg
}

// SpareKg is what may still come on board; negative: too heavy.
func (l Load) SpareKg() float64 { return l.AllowedKg - l.Kg() }

// Most is the most of one tank that the vehicle may be driven with, with everything
// else as it is and at most its capacity; 0 where it is too heavy even without.
func (l Load) Most(tank string, capacity float64) float64 {
	each, ok := kgPer[tank]
	if !ok {
		return max(capacity, 0)
	}
	return min(max(l.without(tank).SpareKg()/each, 0), max(capacity, 0))
}

// without is the load with a tank empty.
func (l Load) without(tank string) Load {
	rest := l
	rest.Levels = nil
	for _, c := range l.Levels {
		if c.Tank != tank {
			rest.Levels = append(rest.Levels, c)
		}
	}
	return rest
}

// Kinds of what is said of a load.
const (
	HeavyWithout fact.Kind = "weight.without" // too heavy even with the tank empty
	HeavyWith    fact.Kind = "weight.with"    // too heavy with what the tank holds
	HeavyFull    fact.Kind = "weight.full"    // too heavy if the tank were full
)

// Says is that the vehicle is too heavy, or how much of a tank it may be driven
// with ("": none can give way); nothing where the full tank fits too. A weighbridge
// tells the truth.
func (l Load) Says(tank string, capacity float64) fact.Fact {
	most := fact.Quantity(l.Most(tank, capacity), "L", 0)
	which, allowed := fact.Value{}, fact.Kg(l.AllowedKg)
	if tank != "" {
		which = fact.Tank(tank, "")
	}
	over, dry := -l.SpareKg(), -l.without(tank).SpareKg()
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
