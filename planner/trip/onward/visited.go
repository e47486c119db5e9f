package onward

import (
	"ullage/geo"
	"ullage/planner/trip"

	"github.com/paulmach/orb"
)

// A Passed is a call whose place is here or behind.
type Passed struct {
	Call trip.Call
	Over bool // place and time are behind: without another word it was called at
}

// Behind lists the calls that are here or behind at a kilometre of the route
// and a local time, in their order. A night that is not over yet was not
// spent: its call is not Over. An error says what is wrong with the time.
func Behind(t trip.Trip, it trip.Itinerary, km float64, time trip.Moment) ([]Passed, error) {
	min, err := minute(t, time)
	if err != nil {
		return nil, err
	}
	now := Now{here: km, min: min}
	var out []Passed
	for _, d := range it.Days {
		for _, c := range d.Calls {
			if c.Km <= km+hereKm && (now.behind(c) || !c.Night) {
				out = append(out, Passed{c, now.behind(c) && (!c.Night || now.nights(c) > 0)})
			}
		}
	}
	return out, nil
}

// Locate is the kilometre of the plan's route that is nearest to a point, and
// how many kilometres off it the point lies. Where the route comes by more
// than once, the pass counts that the plan expects at this time. An error
// says that the route is too far away, or at its end.
func Locate(t trip.Trip, it trip.Itinerary, at orb.Point, time trip.Moment) (km, offKm float64, err error) {
	min, err := minute(t, time)
	if err != nil {
		return 0, 0, err
	}
	line, err := geo.Measure(t.Route)
	if err != nil {
		return 0, 0, err
	}
	km, off, err := position(line, t, it, Now{At: &at}, min)
	return km, off / 1000, err
}
