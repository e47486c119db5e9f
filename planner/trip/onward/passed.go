package onward

import (
	"slices"

	"github.com/paulmach/orb"

	"ullage/geo"
	"ullage/planner"
	"ullage/planner/trip"
)

// This file tells which calls of a plan lie behind somebody on the road, and
// what of their levels did not come about where no call was made.

// A Passed is a call whose place is here or behind.
type Passed struct {
	Call trip.Call
	Over bool // place and time are behind: without another word it was called at
}

// Behind lists the calls that are here or behind at a kilometre of the route
// and a local time, in their order. A night that is not over yet was not
// spent: its call is not Over. An error says what is wrong with the time.
func Behind(t trip.Trip, it trip.Itinerary, km float64, time string) ([]Passed, error) {
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
func Locate(t trip.Trip, it trip.Itinerary, at orb.Point, time string) (km, offKm float64, err error) {
	min, err := minute(t, time)
	if err != nil {
		return 0, 0, err
	}
	line, err := geo.Measure(t.Route)
	if err != nil {
		return 0, 0, err
	}
	km, off, err := position(line, it, Now{At: &at}, min)
	return km, off / 1000, err
}

// behind: a call is behind if its place is, or if it is here and its time is
// over. Of a call here it counts what is said; a night is over by the clock only.
func (n Now) behind(c trip.Call) bool {
	yes, said := n.Called[c.Stop]
	switch {
	case c.Km < n.here-hereKm:
		return true
	case c.Km > n.here+hereKm || said && !yes:
		return false
	}
	return c.LeaveMin <= n.min || said && !c.Night
}

func (n Now) called(c trip.Call) bool {
	yes, said := n.Called[c.Stop]
	return yes || !said
}

// nights are those of a call that are over.
func (n Now) nights(c trip.Call) int {
	switch days := int(n.min/1440) - int(c.ArriveMin/1440); {
	case !c.Night:
		return 0
	case n.min >= c.LeaveMin:
		return c.Nights
	default:
		return min(max(days, 0), c.Nights)
	}
}

// undone is how much of a level of the plan, after a call behind, did not come
// about: what a missed service would have given or taken, and nights to come.
// before and after are the tank's levels at the call.
func (n Now) undone(c trip.Call, tank trip.Tank, before, after trip.Level) trip.Level {
	i := slices.IndexFunc(c.Tasks, func(x trip.Task) bool { return x.Tank == tank.ID })
	jump := plus(after, before, -1)
	switch {
	case i >= 0 && n.called(c):
		return trip.Level{}
	case i < 0 && c.Night:
		return plus(trip.Level{}, jump, 1-float64(n.nights(c))/float64(max(c.Nights, 1)))
	case i < 0 || n.nights(c) == 0:
		return jump
	}
	// The night was spent elsewhere: its use stays, and the doubt of before.
	service := c.Tasks[i].Amount
	if tank.Kind == planner.Waste {
		service = -service
	}
	return trip.Level{L: service, Likely: service,
		Low:  service + max(0, (before.Likely-before.Low)-(after.Likely-after.Low)),
		High: service - max(0, (before.High-before.Likely)-(after.High-after.Likely))}
}

// plus adds k times the levels of m to those of l; place and time stay.
func plus(l, m trip.Level, k float64) trip.Level {
	l.L, l.Low, l.Likely, l.High = l.L+k*m.L, l.Low+k*m.Low, l.Likely+k*m.Likely, l.High+k*m.High
	return l
}

// within keeps levels between empty and full.
func within(l trip.Level, capacity float64) trip.Level {
	for _, v := range []*float64{&l.L, &l.Low, &l.Likely, &l.High} {
		*v = min(max(*v, 0), capacity)
	}
	return l
}
