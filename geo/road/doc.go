// Package road finds ways on a network of roads: from here to there, the detour
// to a place, other ways, and the roads that a track follows. It knows no tanks
// and no days.
//
// In come a [net.Network] and a [net.Vehicle] ([NewRouter]), then positions
// ([Router.Snap], [Router.SnapSite]) and questions ([Query]). Out go a [Path] or
// a [Course] with its length and time, [Detour]s, and what a driver should know
// of it as kinds and values, not as sentences ([Router.Notes],
// [Router.Avoided]). Read router.go first, then query.go.
//
// Unless a name says otherwise, distances are metres on the WGS84 ellipsoid
// (see ullage/geo), times seconds, masses tonnes, points
// orb.Point{longitude, latitude}. Inside, lengths are whole centimetres and
// times whole milliseconds, so that sums are exact and equal ways are equal.
//
//	router, err := road.NewRouter(ctx, network, vehicle, road.Fastest) // once per vehicle and aim
//	q := router.Query()                                                // scratch memory, one per goroutine
//	path, err := q.Route(router.Snap(from, 500), router.Snap(to, 500))
//	line := network.Line(path.Steps)
//
// Decisions. Ways come from a customizable contraction hierarchy (see
// geo/road/order): another vehicle needs no new build, only weights; price: some
// 100 bytes a junction for each. Roads for guests only count twenty-fold and
// stay usable at the ends; private ones are closed. A detour stays within one
// leg, a piece of the course that is itself a best way, so nothing drawn on
// purpose is left out and two sweeps serve all places; price: leaving before a
// via point and joining after it is not offered. A site is entered by a road
// within its outline that is joined with the rest, else by a gate, else where a
// road shares a point with the outline, else from the nearest road. Joined is a
// road that one can get to from most of the network, whatever was driven before,
// and from which one gets back. A track is matched by a hidden Markov model
// (P. Newson, J. Krumm, 2009) with the shortest ways of a vehicle that fits
// everywhere: what was driven was possible. Other ways go through any junction on
// a plateau; price: some 0.2 µs a junction.
//
// What is not known: walls and fences other than a site's outline, gradients,
// traffic, times of day. A vehicle may turn back into the road that it came by
// farther than 500 m after a forbidden turn, where no other road leads on, and at
// via points.
//
// The package does no I/O, reads no clock and keeps no state: the same input
// gives the same output, byte for byte.
//
// Files, each using only those above it:
//
//   - router.go: a vehicle and an aim, and what each road costs them
//   - joined.go: which roads are joined with most of the network
//   - weigh.go: what the arcs of the hierarchy cost; a router is made
//   - place.go: a spot on a road, and where searches from it begin
//   - snap.go: the road that a click means
//   - site.go: where a vehicle drives in to a place
//   - reach.go: the direction of a search, and how far it has come
//   - sweep.go: a search from many states to many others
//   - query.go: what a way costs
//   - unpack.go: arcs of the hierarchy back into roads
//   - path.go: the way itself
//   - course.go: a trip's route, on roads and off them
//   - legs.go: pieces of a course that are best ways
//   - halfway.go: from a leg to places, or from them back
//   - detour.go: both halves
//   - around.go: round roads that are closed to the vehicle
//   - other.go: other ways
//   - match.go: a track on roads
//   - notes.go: what a driver should know of a path
package road
