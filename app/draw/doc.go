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
//		fmt.Println(draw.Strip(s, axis, itinerary.Days))
//	}
package draw
