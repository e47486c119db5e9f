package read

import (
	"ullage/planner"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// A course is one tank along a plan, at the least, the likely and the planned
// use at once. What is bought is what the plan says, so that less use leaves more in the tank
// until it is full.
type course struct {
	tank planner.Tank
	head [3]float64 // headroom at low, likely and high use
}

func newCourse(t planner.Tank) course {
	c := course{tank: t}
	start := t.Start
	if t.Kind == planner.Waste {
		start = t.Capacity - t.Start
	}
	c.head = [3]float64{start, start, start}
	return c
}

func (c *course) take(use life.Band, added float64) {
	for i, u := range [3]float64{use.Low, use.Likely, use.High} {
		c.head[i] = min(max(c.head[i]-u+added, 0), c.tank.Capacity)
	}
}

// serve fills by an amount, or empties.
func (c *course) serve(amount float64) {
	if c.tank.Kind == planner.Waste {
		c.head = [3]float64{c.tank.Capacity, c.tank.Capacity, c.tank.Capacity}
		return
	}
	c.take(life.Band{}, amount)
}

// fill writes the band into a level.
func (c course) fill(l trip.Level) trip.Level {
	a, b := c.head[2], c.head[0]
	l.Likely = c.head[1]
	if c.tank.Kind == planner.Waste {
		a, b, l.Likely = c.tank.Capacity-c.head[0], c.tank.Capacity-c.head[2], c.tank.Capacity-c.head[1]
	}
	l.Low, l.High = min(a, b), max(a, b)
	return l
}

// eachNight is what each night of a visit takes from a tank of the vehicle; none by day.
func (b reader) eachNight(s *planner.Stop, v planner.Visit, tank int) []life.Band {
	if !v.Night {
		return nil
	}
	c := b.Calls[s.ID]
	first, later := b.Use.FirstAndLater(c.Place, trip.Where(c.Place), c.Km)
	out := make([]life.Band, s.Night.Nights)
	for i := range out {
		if out[i] = later[tank]; i == 0 {
			out[i] = first[tank]
		}
	}
	return out
}
