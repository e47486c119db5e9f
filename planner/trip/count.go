package trip

import (
	"fmt"

	"ullage/planner/life"
)

// A Count is what a plan counts with for one tank: at least, likely, and (High) planned.
type Count struct {
	Tank   string    `json:"tank"`
	Name   string    `json:"name"`
	Unit   string    `json:"unit"`
	Per100 life.Band `json:"per_100km"`        // negative fills
	Night  life.Band `json:"night"`            // a usual day and night in the middle of the trip, at a place that offers nothing
	Factor float64   `json:"factor,omitempty"` // of the usual use, learnt on the road; 0: nothing learnt
	Source string    `json:"source,omitempty"`
}

func (b *Built) counts() []Count {
	var out []Count
	night := b.usualNight()
	for i, k := range b.Trip.Vehicle.Tanks {
		c := Count{Tank: k.ID, Name: k.Name, Unit: k.Unit, Per100: times(b.use.perKm(k), 100), Night: night[i], Source: k.Use.Source}
		if b.use.lives {
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

// stuck is how much of a full tank does not come out where the trip is coldest:
// at its ends, and at the quarters between.
func (b *Built) stuck(k Tank) float64 {
	if !b.use.lives {
		return 0
	}
	most, n := 0.0, len(b.Trip.Route)-1
	for i := range 5 {
		p := b.Trip.Route[i*n/4]
		air := b.use.stay(nil, life.Where{Lat: p.Lat(), Lon: p.Lon()}, b.axis.lengthKm*float64(i)/4, false).Air
		most = max(most, b.use.model.Vehicle.Stuck(k.ID, air))
	}
	if most > 0.01 {
		b.cautions = append(b.cautions, fmt.Sprintf("%s: in the cold of this trip about %.0f %% of a full tank stays liquid, and the plan does not count on it. Fill propane or a winter mixture.", k.Name, 100*most))
	}
	return most * k.Capacity
}

// usualNight is a night in the middle of the trip, at a place that offers nothing.
func (b *Built) usualNight() []life.Band {
	middle := b.Trip.Route[len(b.Trip.Route)/2]
	return b.use.nights(nil, life.Where{Lat: middle.Lat(), Lon: middle.Lon()}, b.axis.lengthKm/2, 1)
}
