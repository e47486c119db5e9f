package audit

import "ullage/planner/trip"

// Sheet says which rules an itinerary of the trip among the places breaks, each where it
// is broken. One without days breaks none. open may be nil: hours are not looked at.
// O(days + calls × tanks + places).
func Sheet(t trip.Trip, places []trip.Place, it trip.Itinerary, open Open) []Broken {
	if len(it.Days) == 0 {
		return nil
	}
	c := &checker{trip: t, it: it, places: make(map[string]*trip.Place, len(places))}
	for i := range places {
		c.places[places[i].ID] = &places[i]
	}
	c.dates()
	c.road()
	c.clock()
	c.nights()
	c.tanks()
	c.mass()
	c.wishes()
	c.byDate()
	c.closed(open)
	c.cost()
	return c.broken
}
