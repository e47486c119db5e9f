// Package geo measures a route on the earth and finds what lies along it.
//
// In come a polyline ([Measure]) and places. Out go its length and points along
// it ([Line]), distances ([DistanceM]) and the corridor ([NewCorridor]): where
// along a line a place is reached, how far off it lies, and each separate pass of
// a line that comes by twice. It knows no roads, no files and no vehicle. Read
// line.go first.
//
// Unless a name says otherwise, distances are metres on the WGS84 ellipsoid,
// angles degrees clockwise from north, points are orb.Point{longitude,
// latitude}.
//
//	line, err := geo.Measure(route)
//	corridor := geo.NewCorridor(line)
//	for _, pass := range corridor.Passes(place, 5000) {
//		fmt.Println(pass.AlongM, pass.OffM)
//	}
//
// Decisions. Distances are tidwall/geodesic's (v1.52.4, MIT, no dependencies, 36
// kB in the page with this package): Karney's algorithm instead of our own; the
// module proxy lists no versions of it, the exact one is served. The corridor
// works with earth-centred coordinates and chords of at most 1 km, turned back
// into ground distance with the radius of curvature, so that poles and
// antimeridian need no cases; price: 2 cm of sag. A pass is a maximal stretch
// within the radius, so out and back beyond it is two; price: a large radius
// merges passes.
//
// The package does no I/O, reads no clock and keeps no state: the same input
// gives the same output, byte for byte.
//
// Files, each using only those above it:
//
//   - line.go: a measured line
//   - earth.go: the ellipsoid as seen from its centre
//   - corridor.go: what lies along a line
package geo
