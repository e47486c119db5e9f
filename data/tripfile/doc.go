// Package tripfile reads and writes trip files and fleet files.
//
// A trip file is a GeoJSON FeatureCollection (RFC 7946) with a foreign member
// `ullage` that holds the trip in format ullage-trip-1, and one LineString
// feature that is its route; any map tool opens it. A fleet file is JSON in
// format ullage-fleet-1. README.md describes both. Out go a [trip.Trip] and
// vehicles that are valid. Read trip.go first.
//
// Members that this version does not know are told and left out, so that files may
// say more; one nearly called as a known one is an error. What it knows must be right: errors name the file, line and column,
// and what to write instead. Points are orb.Point{longitude, latitude}.
//
//	t, notes, err := tripfile.Read("summer.geojson", f)
//	if err != nil { return err }
//	it, err := answer.Trip(ctx, t, places, build.Options{})
//
// Decision: a file may name a vehicle of the fleet or hold its own. Price: it is decoded two or three times, once for how it looks.
//
// Files, each using only those above it:
//
//   - decode.go: bytes, and what is wrong with them
//   - version.go: files of newer versions
//   - fleet.go: vehicles
//   - trip.go: trips
//   - parts.go: a trip and its route apart
package tripfile
