package build

import (
	"math"

	"ullage/planner"
	"ullage/planner/life"
)

// spare sets, for each service, the headroom to have on arrival so that the
// next other place that serves the tank is in reach if this one is closed:
// the use over the kilometres between them with both half detours, and a
// night's use for each full day that lies between. The reserve is there to be
// spent on that. Where no other place follows, it is the headroom to reach the
// end of the route.
//
// Places of one operator, or on one site, count as one. Places that serve
// guests only do not count: the night may be full.
func (b *gathering) spare(tanks []planner.Tank) {
	night := b.UsualNight()
	for i, here := range b.Around {
		for j := range here.Serves {
			x := &here.Serves[j]
			km := b.lengthKm() - here.Km + here.DetourKm/2
			if n, ok := b.next(i, x.Tank); ok {
				km = b.Around[n].Km - here.Km + (here.DetourKm+b.Around[n].DetourKm)/2
			}
			x.Spare = b.reach(tanks, x.Tank, night, km)
		}
	}
}

// next finds the next stop after i that serves the tank and does not share
// the fate of stop i.
func (b *gathering) next(i int, tank string) (int, bool) {
	here := b.Around[i]
	for n := i + 1; n < len(b.Around); n++ {
		for _, x := range b.Around[n].Serves {
			if x.Tank == tank && !x.GuestsOnly && !here.SharesFate(b.Around[n]) {
				return n, true
			}
		}
	}
	return 0, false
}

// reach is the headroom that a tank must have to go on for km, with nights
// like the usual one.
func (b *gathering) reach(tanks []planner.Tank, tank string, night []life.Band, km float64) float64 {
	for i, t := range tanks {
		if t.ID == tank {
			nights := math.Round(km / b.Drive.MaxKmPerDay)
			return min(max(t.PerKm, 0)*km+max(night[i].High, 0)*nights, t.Capacity)
		}
	}
	panic("trip: service for a tank that the vehicle does not have: " + tank)
}
