package read

import (
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// sourceStated: the vehicle says where a tank's use comes from.
const sourceStated fact.Kind = "source.stated"

// counts is what the plan counts with, by tank, and where that comes from.
func (b reader) counts() []trip.Count {
	var out []trip.Count
	night := b.UsualNight()
	for i, k := range b.Trip.Vehicle.Tanks {
		c := trip.Count{Tank: k.ID, Name: k.Name, Unit: k.Unit, Per100: trip.Scaled(b.Use.PerKm(k), 100), Night: night[i]}
		switch {
		case b.Use.Lives:
			c.Source = life.Source(k.ID)
		case k.Use.Source != "":
			c.Source = fact.Of(sourceStated, fact.V{"text": fact.Text(k.Use.Source)})
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
