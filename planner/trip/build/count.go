package build

import (
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// stuck is how much of a full tank does not come out where the trip is coldest:
// at its ends, and at the quarters between.
func (b *Built) stuck(k trip.Tank) float64 {
	if !b.Use.Lives {
		return 0
	}
	most, n := 0.0, len(b.Trip.Route)-1
	for i := range 5 {
		p := b.Trip.Route[i*n/4]
		air := b.Use.Stay(nil, life.Where{Lat: p.Lat(), Lon: p.Lon()}, b.Axis.LengthKm*float64(i)/4, false).Air
		most = max(most, b.Use.Model.Vehicle.Stuck(air)[k.ID])
	}
	if most > 0.01 {
		b.Notes = append(b.Notes, fact.Of(gasStuck, fact.V{"tank": k.Called(), "part": fact.Share(most, 0)}))
	}
	return most * k.Capacity
}

// UsualNight is a night in the middle of the trip, at a place that offers nothing.
func (b *Built) UsualNight() []life.Band {
	middle := b.Trip.Route[len(b.Trip.Route)/2]
	return b.Use.Nights(nil, life.Where{Lat: middle.Lat(), Lon: middle.Lon()}, b.Axis.LengthKm/2, 1)
}
