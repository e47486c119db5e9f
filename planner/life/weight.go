package life

import "fmt"

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
// liquids; where only the mass in running order is known, see [EmptyKg].
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

// EmptyKg takes out of the mass in running order what it holds: a driver of 75
// kg and 90 % of the diesel (EU 1230/2012; from memory), and water and gas as the vehicle's
// papers say.
func EmptyKg(runningKg, dieselTankL, waterL, gasKg float64) float64 {
	return runningKg - AdultKg - 0.9*dieselTankL*dieselKgL - waterL*waterKgL - gasKg
}

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

// Warning says in words that the vehicle is too heavy, or how much water may be driven with;
// "" where a full tank of fresh water fits too. A weighbridge tells the truth.
func (l Load) Warning(freshCapacity float64) string {
	fresh := l.MaxFreshL(freshCapacity)
	dry := l
	dry.Levels.Fresh = 0
	switch over := -dry.SpareKg(); {
	case over > 0:
		return fmt.Sprintf("Too heavy by %.0f kg even without fresh water: leave gear at home, empty the grey tank. The plate allows %.0f kg; weigh the vehicle before you go.", over, l.AllowedKg)
	case l.SpareKg() < 0:
		return fmt.Sprintf("Too heavy by %.0f kg: drive with at most %.0f L of fresh water. The plate allows %.0f kg; weigh the vehicle, each axle too.", -l.SpareKg(), fresh, l.AllowedKg)
	case fresh < freshCapacity:
		return fmt.Sprintf("Drive with at most %.0f L of fresh water: more is too heavy. Fill up where you stay.", fresh)
	}
	return ""
}
