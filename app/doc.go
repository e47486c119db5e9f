// Package page is what is seen in the browser: the trip form, the level strips,
// the itinerary by day and the map, all pointing at the same moment.
//
// It owns the words and their place. What is true lives in one [Model] value,
// changed only by [Update]; components show parts of it and send a [Msg] back.
// Plans come from package job, files and the map library from package browser,
// pictures from package draw.
//
// Unless a name says otherwise, distances are kilometres along the route,
// times are minutes since 00:00 of day one, money is in the trip's currency.
// What is shown and typed is in the units of the model's [say.Voice].
//
//	m := page.Update(page.New(trip.Fleet()), page.TripRead{Trip: t})
//	m = page.Update(m, page.Edited{Field: "adults", Text: "3"})
package page
