// Package draw turns an itinerary into pictures that are values: level strips
// along the trip and an overview of the route.
//
// It owns where things are drawn and what they are called; colours and line
// widths are the business of the style sheet, which finds everything by class.
// It reads nothing and keeps nothing: the same itinerary gives the same
// picture, byte for byte.
//
// Unless a name says otherwise, distances are kilometres along the route,
// times are minutes since 00:00 of day one, X is the share of the trip's
// width from 0 to 1, points are orb.Point{longitude, latitude}.
//
//	axis := draw.NewAxis(itinerary)
//	for _, s := range itinerary.Strips {
//		show(draw.Strip(s, axis, itinerary.Days))
//	}
//
// Decisions. The axis of all strips is kilometres with a slot for each night, since a
// night uses water without a kilometre. A strip draws headroom: low is always bad.
// Pictures are values, the same for goldens and for the page.
//
// Read axis.go first, then strip.go.
//
// Files, each using only those above it:
//
//   - axis.go: the axis of kilometres and nights
//   - node.go: a piece of a picture
//   - level.go: levels at a moment
//   - strip.go: the level of a tank along the trip
//   - gauge.go: what a stop changes
//   - ruler.go: days and stops above the strips
//   - overview.go: the route where no map can be
package draw
