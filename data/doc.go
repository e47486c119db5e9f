// Package data turns files into values and values into files.
//
// In come route files (GeoJSON, GPX and KML) and places as GeoJSON, out go a [Route] and places. Its rooms own the rest: osm
// (map data), hours (opening hours), tripfile (trips and fleets), problemfile (problems and plans), strict (where JSON is wrong),
// demo (the invented island). It measures nothing and plans nothing. Read route.go first, then read.go.
//
//	route, err := data.ReadRoute("holiday.gpx", file)
//	line, err := geo.Measure(route.Line())
//
// Readers take bytes as people have them: large, cut short, in an old charset,
// of another kind. Whatever they cannot read they refuse with an error that
// names the file, the line and what to do; they never guess and never panic.
//
// Decisions:
//
//   - Charsets by hand: UTF-8, UTF-16 and the Latin ones, which are taken as ISO 8859-1. golang.org/x/text/encoding/charmap would
//     bring all its tables, 13.5 kB of the page (15.4 kB with its readers), for a few signs in names of old files. Price: the euro
//     sign and typographic quotes of windows-1252 are lost in a route's name; coordinates are ASCII.
//   - Heights of a track wobble: changes below 10 m between two turning points are left out of a climb, and a route's climb is
//     spread evenly over the driven km. Price: a pass counts too little where it is, too much elsewhere.
//
// Files, each using only those above it:
//
//   - text.go: what all text formats share
//   - route.go: what a route is
//   - climb.go: how far it rises and falls
//   - route_geojson.go: routes from GeoJSON
//   - route_xml.go: a walk through XML, and the points on it
//   - route_gpx.go: routes from GPX
//   - route_kml.go: routes from KML
//   - read.go: routes from any of these
//   - places.go: places as GeoJSON
//   - notes.go: what people know of places
package data
