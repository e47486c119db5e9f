package audit

import (
	"math"
	"slices"
	"strings"

	"ullage/planner/fact"
	"ullage/planner/trip"
)

// road: each day goes on where the one before ended, calls come in the order of the
// route, and what is driven is the route and the ways to its stops.
func (c *checker) road() {
	at, driven := 0.0, 0.0
	for _, d := range c.it.Days {
		if !near(d.FromKm, at) || d.ToKm < d.FromKm-0.01 {
			c.breaks(Broken{Rule: RuleRoad, Day: d.Number, Have: d.FromKm, Need: at})
		}
		km := d.FromKm
		for _, x := range d.Calls {
			if x.Km < km-0.01 || x.Km > d.ToKm+0.01 {
				c.breaks(Broken{Rule: RuleRoad, Day: d.Number, Stop: x.Stop, Have: x.Km, Need: km})
			}
			km = x.Km
			driven -= x.DetourKm
		}
		for _, f := range d.Ferries {
			driven += f.ToKm - f.FromKm
		}
		driven += d.DriveKm
		if limit := c.trip.Day.MaxKm; d.DriveKm > limit+0.01 {
			c.breaks(Broken{Rule: RuleDay, Day: d.Number, Have: d.DriveKm, Need: limit})
		}
		at = d.ToKm
	}
	if !near(at, c.it.LengthKm) {
		c.breaks(Broken{Rule: RuleRoad, Day: len(c.it.Days), Have: at, Need: c.it.LengthKm})
	}
	// A ferry is a metre to drive for the planner.
	if math.Abs(driven-c.it.LengthKm) > 0.02+0.002*float64(len(c.it.Days)) {
		c.breaks(Broken{Rule: RuleRoad, Have: driven, Need: c.it.LengthKm})
	}
}

// clock: each day's minutes are driving, ferries, calls and time in hand.
func (c *checker) clock() {
	for _, d := range c.it.Days {
		if len(d.Calls) == 0 && d.ToKm == d.FromKm && d.DriveMin == 0 {
			if d.EndMin != d.StartMin {
				c.breaks(Broken{Rule: RuleClock, Day: d.Number, Have: d.EndMin, Need: d.StartMin})
			}
			continue
		}
		now, spent, stopMin := d.StartMin, d.DriveMin, 0.0
		for _, f := range d.Ferries {
			spent += f.Min
		}
		for _, x := range d.Calls {
			if x.ArriveMin < now-0.01 || x.LeaveMin < x.ArriveMin-0.01 {
				c.breaks(Broken{Rule: RuleClock, Day: d.Number, Stop: x.Stop, Have: x.ArriveMin, Need: now})
			}
			now = x.LeaveMin
			if spent += x.InHandMin; !x.Night {
				spent += x.LeaveMin - x.ArriveMin
			} else {
				stopMin = -x.InHandMin
			}
		}
		if math.Abs(d.EndMin-d.StartMin-spent) > 0.05 {
			c.breaks(Broken{Rule: RuleClock, Day: d.Number, Have: d.EndMin - d.StartMin, Need: spent})
		}
		if limit := c.trip.Day.MaxMin; spent+stopMin > limit+0.05 {
			c.breaks(Broken{Rule: RuleDay, Day: d.Number, Have: spent + stopMin, Need: limit})
		}
	}
	c.keys()
}

// keys: who is back in time has an hour for the hand-over, or it is said.
func (c *checker) keys() {
	last := c.it.Days[len(c.it.Days)-1]
	over := math.Mod(last.EndMin, 1440) + trip.HandOverMin - c.trip.KeysByMin
	said := c.it.Return != nil && slices.ContainsFunc(c.it.Return.Warnings, func(f fact.Fact) bool { return strings.HasPrefix(string(f.Kind), "keys.") })
	if c.trip.KeysByMin > 0 && over > 0.05 && !said {
		c.breaks(Broken{Rule: RuleKeys, Day: last.Number, Have: math.Mod(last.EndMin, 1440), Need: c.trip.KeysByMin - trip.HandOverMin})
	}
}
