// Package build makes a trip and the places around it into a problem for the
// planner.
//
//	b, err := build.Trip(t, places, build.Options{Hours: hours, Roads: roads})
//
// What comes in are a [trip.Trip], places, opening hours and, where map data have
// them, roads. What goes out is [Built]: the problem, and what is needed to read a plan of it
// back. Read build.go first: it names the stages, each a type that only the one before
// can make: [Course], [Tanks], places near the route, their offers, [Stops], the problem.
//
// Decisions. What the data leave unknown is never planned on; what is likely is, and
// said to be. A place that is too low, closed or private stays a candidate with the reason, so
// that people see why it is not in the plan. Of equal stops beside each other the problem has the
// nearest only; price: a detour of a kilometre. A stay of several nights is a stop
// of its own, which asks for no more work of the planner than another place.
//
// Files, each using only those above it:
//
//   - elsewhere.go: map data of somewhere else
//   - ferry.go: the ferries of a route, and their minutes on the clock
//   - options.go: what is asked with a trip
//   - course.go: the first stage: a trip set off
//   - fits.go: why a place is of no use to this vehicle
//   - near.go: places near the route
//   - nights.go: one night at a place
//   - offer.go: what a place can do for the trip
//   - longer.go: stays of several nights
//   - stops.go: a stop for each pass and stay
//   - byroad.go: true ways in place of estimates
//   - order.go: along the route
//   - require.go: places that must be called at
//   - site.go: places that share their fate
//   - wishes.go: wishes by place and date
//   - spare.go: headroom for a place that is closed
//   - thin.go: stops that another makes pointless
//   - weight.go: the vehicle on the scales
//   - tanks.go: the tanks of the problem
//   - build.go: all stages, and the problem
package build
