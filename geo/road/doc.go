// Package road is the network of roads: what a vehicle may use, the way from
// here to there, the detour to a place, and the roads that a track follows.
//
// It owns the network ([Build]), the vehicle's limits ([Vehicle]), routes
// ([Router]), detours ([Query.Detours]), places on roads ([Router.SnapSite]) and
// tracks on roads ([Query.Match]). It reads no files: package data/osm turns
// map data into an [Input]. It knows no tanks and no days.
//
// Unless a name says otherwise, distances are metres on the WGS84 ellipsoid
// (see ullage/geo), times seconds, masses tonnes, points
// orb.Point{longitude, latitude}. Inside, lengths are whole centimetres and
// times whole milliseconds, so that sums are exact and equal ways are equal.
//
//	net, err := road.Build(ctx, input)                     // once per data set
//	router, err := NewRouter(ctx, net, vehicle, road.Fastest)  // once per vehicle and aim
//	q := router.Query()                                    // scratch memory, one per goroutine
//	path, err := q.Route(router.Snap(from, 500), router.Snap(to, 500))
//	line := net.Line(path.Steps)
//
// Shortest ways come from a customizable contraction hierarchy: J. Dibbelt,
// B. Strasser, D. Wagner, "Customizable Contraction Hierarchies", ACM J.
// Experimental Algorithmics 21, 2016 (arXiv 1402.0402). The order is by
// inertial flow: A. Schild, C. Sommer, "On Balanced Separators in Road
// Networks", SEA 2015.
//
// What is not known: walls and fences other than a site's outline, gradients, traffic, times of day. A vehicle may turn back into
// the road that it came by farther than 500 m after a forbidden turn, where no other road leads on, and at via points.
//
// The package does no I/O, reads no clock and keeps no state: the same input
// gives the same output, byte for byte.
package road
