// Package byroad asks a road network what a trip needs to know: how fast its
// route is driven, what it takes to call at a place beside it, the way
// between points that a person clicks, and why a vehicle does not go the way
// that a car goes.
//
// It stands between geo/road, which knows no trips, and planner/trip, which
// knows no roads. Positions that it gives are km along the route as the trip
// measures it.
//
//	g, err := byroad.New(ctx, network)
//	it, err := answer.Trip(ctx, t, places, answer.Options{Build: build.Options{Roads: g.Trip(ctx)}})
//	legs, err := g.Follow(ctx, t.Vehicle, [][2]orb.Point{{a, b}}, 500)
//
// It is pure, as both of them are.
package byroad
