package audit

import "ullage/planner/life"

// mass: at no departure is the vehicle heavier than its plate. Who is on the road with
// too much waste aboard is told so as the trip begins.
func (c *checker) mass() {
	if c.it.Weight == nil || len(c.it.Strips) < len(c.trip.Vehicle.Tanks) {
		return
	}
	v := c.trip.Vehicle
	dry := v.EmptyKg + life.AdultKg*float64(c.trip.Party.Adults) + life.ChildKg*float64(c.trip.Party.Children)
	if c.trip.GearKg > 0 {
		dry += c.trip.GearKg
	} else {
		dry += life.GearPersonKg*float64(c.trip.Party.Adults+c.trip.Party.Children) + life.GearMetreKg*v.LengthM
	}
	weigh := func(level func(i int, id string) float64) float64 {
		kg := dry
		for i, k := range v.Tanks {
			kg += life.KgPer(k.ID) * level(i, k.ID)
		}
		return kg
	}
	start := weigh(func(i int, _ string) float64 { return c.it.Strips[i].Points[0].L })
	most := v.MassKg
	if c.trip.DoneKm > 0 {
		most = max(most, start)
	}
	if start > most+0.5 {
		c.breaks(Broken{Rule: RuleMass, Day: 1, Have: start, Need: most})
	}
	for _, d := range c.it.Days {
		for _, x := range d.Calls {
			kg := weigh(func(_ int, id string) float64 { return x.Leave[id] })
			if kg > most+0.5 || kg-x.LeaveKg > 0.5 || x.LeaveKg-kg > 0.5 {
				c.breaks(Broken{Rule: RuleMass, Day: d.Number, Stop: x.Stop, Have: kg, Need: min(most, x.LeaveKg)})
			}
		}
	}
}
