package read

import (
	"ullage/planner/life"
	"ullage/planner/trip"
)

func (b reader) counts() []trip.Count {
	var out []trip.Count
	night := b.UsualNight()
	for i, k := range b.Trip.Vehicle.Tanks {
		c := trip.Count{Tank: k.ID, Name: k.Name, Unit: k.Unit, Per100: trip.Scaled(b.Use.PerKm(k), 100), Night: night[i], Source: k.Use.Source}
		if b.Use.Lives {
			c.Source = life.Source(k.ID)
		}
		for _, f := range b.Trip.Learned {
			if f.Tank == k.ID {
				c.Factor = f.Factor
			}
		}
		out = append(out, c)
	}
	return out
}
