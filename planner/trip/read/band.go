package read

import (
	"slices"

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

// stop is a visit: the use of its nights, then what is served.
func (c *course) stop(v planner.Visit, nights life.Band) {
	i := slices.IndexFunc(v.Serve, func(y planner.Serve) bool { return y.Tank == c.tank.ID })
	switch {
	case i < 0:
		c.take(nights, 0)
	case c.tank.Kind == planner.Waste:
		c.head = [3]float64{c.tank.Capacity, c.tank.Capacity, c.tank.Capacity}
	default:
		c.take(nights, v.Serve[i].Amount)
	}
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

// atNight is what the night of a visit takes from a tank of the vehicle; nothing by day.
func (b reader) atNight(s *planner.Stop, v planner.Visit, tank int) life.Band {
	if !v.Night {
		return life.Band{}
	}
	c := b.Calls[s.ID]
	return b.Use.Nights(c.Place, trip.Where(c.Place), c.Km, s.Night.Nights)[tank]
}
