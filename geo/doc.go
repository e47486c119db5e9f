// Package geo measures a route on the earth and finds what lies along it.
//
// It owns the measured line ([Measure]), distances ([DistanceM]) and the
// corridor ([NewCorridor]): where along a line a place is reached, how far off
// it lies, and each separate pass of a line that comes by twice. It knows no
// roads, no files and no vehicle.
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
// The package does no I/O, reads no clock and keeps no state: the same input
// gives the same output, byte for byte.
package geo
