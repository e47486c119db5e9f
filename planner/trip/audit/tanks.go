package audit

import (
	"math"

	"ullage/planner"
	"ullage/planner/trip"
)

// slightly is what levels may differ by, in the unit of the tank.
const slightly = 0.01

// tanks: each strip stays between empty and full, each act leads from one level to
// another, and driving uses the same on each kilometre.
func (c *checker) tanks() {
	for i, k := range c.trip.Vehicle.Tanks {
		if i >= len(c.it.Strips) || c.it.Strips[i].Tank != k.ID || len(c.it.Strips[i].Points) == 0 {
			c.breaks(Broken{Rule: RuleTank, Tank: k.ID})
			continue
		}
		s := c.it.Strips[i]
		for _, p := range s.Points {
			if !(p.L >= -slightly && p.L <= k.Capacity+slightly) {
				c.breaks(Broken{Rule: RuleTank, Day: p.Day, Tank: k.ID, Have: p.L, Need: k.Capacity})
			}
		}
		for _, d := range c.it.Days {
			for _, x := range d.Calls {
				c.acts(d.Number, x, k)
			}
		}
		c.use(s, k)
		c.end(s, k)
	}
}

// acts of a call on one tank: in the order of the nights, each no more than the tank
// holds, the last leading to the level of leaving.
func (c *checker) acts(day int, x trip.Call, k trip.Tank) {
	night, level, served := 0, x.Arrive[k.ID], false
	for _, t := range x.Tasks {
		if t.Tank != k.ID {
			continue
		}
		// Nights of a stay use; by day nothing does.
		if !leads(t, k) || t.Night < night || t.Night > x.Nights || !x.Night && math.Abs(t.Before-level) > slightly {
			c.breaks(Broken{Rule: RuleAct, Day: day + t.Night, Stop: x.Stop, Tank: k.ID, Have: t.Amount, Need: k.Capacity})
		}
		night, level, served = t.Night, t.After, true
	}
	last := !x.Night || served && night == x.Nights
	if last && math.Abs(x.Leave[k.ID]-level) > slightly {
		c.breaks(Broken{Rule: RuleAct, Day: day, Stop: x.Stop, Tank: k.ID, Have: x.Leave[k.ID], Need: level})
	}
}

// leads says whether an act moves what a tank can hold, from the level before to that after.
func leads(t trip.Task, k trip.Tank) bool {
	to := t.Before + t.Amount
	if k.Kind == planner.Waste || t.Verb == trip.LetOut {
		to = t.Before - t.Amount
	}
	return t.Amount <= k.Capacity+slightly && t.Amount >= -slightly && math.Abs(t.After-to) <= slightly && t.After <= k.Capacity+slightly && t.After >= -slightly
}

// use: between stops, a tank that neither brims over nor lies empty gives the same
// for each kilometre driven.
func (c *checker) use(s trip.Strip, k trip.Tank) {
	var rates []float64
	level, km, beside := s.Points[0].L, 0.0, 0.0
	leg := func(to, detour, arrive float64) {
		if driven := c.drivenTo(to) - c.drivenTo(km) + beside + detour; driven > 5 && !brims(k, level) && !brims(k, arrive) {
			rates = append(rates, (level-arrive)/driven)
		}
	}
	for _, d := range c.it.Days {
		for _, x := range d.Calls {
			leg(x.Km, x.DetourKm/2, x.Arrive[k.ID])
			level, km, beside = x.Leave[k.ID], x.Km, x.DetourKm/2
		}
	}
	leg(c.it.LengthKm, 0, s.Points[len(s.Points)-1].L)
	for _, r := range rates {
		if math.Abs(r-rates[0]) > 0.002+0.01*math.Abs(rates[0]) {
			c.breaks(Broken{Rule: RuleUse, Tank: k.ID, Have: r, Need: rates[0]})
		}
	}
}

// brims says whether a tank is where driving that restores it does nothing more.
func brims(k trip.Tank, level float64) bool {
	if k.Kind == planner.Waste {
		return level <= slightly
	}
	return level >= k.Capacity-slightly
}

// end: the tank comes back as agreed, or what is missing is paid for.
func (c *checker) end(s trip.Strip, k trip.Tank) {
	level := s.Points[len(s.Points)-1].L
	switch e := k.End; {
	case e == nil:
	case e.AtMost != nil && level > *e.AtMost+slightly, e.AtLeast != nil && e.RefillPrice == nil && level < *e.AtLeast-slightly:
		c.breaks(Broken{Rule: RuleEnd, Tank: k.ID, Have: level})
	case e.AtLeast != nil && e.RefillPrice != nil && c.it.Parts.Refill < *e.RefillPrice*(*e.AtLeast-level)-slightly:
		c.breaks(Broken{Rule: RuleEnd, Tank: k.ID, Have: c.it.Parts.Refill, Need: *e.RefillPrice * (*e.AtLeast - level)})
	}
}
