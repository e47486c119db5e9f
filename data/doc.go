// Package data turns files into values and values into files.
//
// This package owns route files (GeoJSON, GPX and KML) and places as GeoJSON.
// Its sub-packages own the rest: osm (places from OpenStreetMap), hours
// (opening hours), tripfile (trips and fleets), demo (the invented island).
// It measures nothing and plans nothing.
//
//	route, err := data.ReadRoute("holiday.gpx", file)
//	line, err := geo.Measure(route.Line())
//
// Readers take bytes as people have them: large, cut short, in an old charset,
// of another kind. Whatever they cannot read they refuse with an error that
// names the file, the line and what to do; they never guess and never panic.
package data
