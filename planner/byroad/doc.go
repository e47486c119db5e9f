// Package byroad asks a road network what a trip needs to know: how fast its
// route is driven, what it takes to call at a place beside it, the way
// between points that a person clicks, and why a vehicle does not go the way
// that a car goes.
//
// It stands between geo/road, which knows no trips, and planner/trip, which
// knows no roads. In come a network ([New]) and a trip or points; out go
// [trip.Course], [trip.Way] and [Leg], with what there is to say of them as
// facts. Positions that it gives are km along the route as the trip
// measures it. Read guide.go first.
//
//	g, err := byroad.New(ctx, network)
//	it, err := answer.Plan(ctx, t, places, answer.Options{Roads: g.Trip(ctx)})
//	legs, err := g.Follow(ctx, t.Vehicle, [][2]orb.Point{{a, b}}, 500)
//
// It is pure, as both of them are.
//
// Decisions. Roads are an interface of the trip ([trip.Roads]), which asks once
// for the course and once for all ways; price: the planner has one position per
// stop, so two overlapping detours do not share their way. The route is a line
// that may come from anywhere, so it is matched, with a vehicle that fits
// everywhere; one that breaks a limit is planned with a caution, and at a press
// led round. A ferry on the course is taken by itself; a place that only a voyage
// reaches is left out. Another way is taken by setting a point on it where the
// best way by way of that point is that way, which is checked: so the page knows
// no second kind of leg; price: a way for which none of three points does is not
// offered.
//
// Files, each using only those above it:
//
//   - facts.go: what roads forbid or leave unsaid, as facts
//   - omitted.go: what a network leaves out, as facts
//   - guide.go: a network, and the routers of the last vehicle
//   - follow.go: the way between points, and of a track
//   - others.go: other ways
//   - along.go: metres along a course as metres along the route
//   - cautions.go: what to mind along a course
//   - pace.go: how fast its sections are driven
//   - course.go: a trip's route on roads and at sea
//   - ways.go: detours to places
//   - trip.go: what planner/trip asks
package byroad
