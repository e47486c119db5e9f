package onward

import (
	"slices"

	"ullage/planner"
	"ullage/planner/trip"
)

// This file tells which calls of a plan lie behind somebody on the road, and
// what of their levels did not come about where no call was made.

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
	service := 0.0
	for _, x := range c.Tasks {
		if x.Tank == tank.ID {
			service += x.Amount
		}
	}
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
