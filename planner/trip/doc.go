// Package trip holds the words of a trip: vehicle, people, calendar, wishes,
// places, and the itinerary that comes of them.
//
// It owns what the numbers of package planner mean: which tanks a vehicle has,
// which place serves which tank, what people, weather and kilometres use. What
// they use it asks of package life, for vehicles that say how they live; the plan
// counts with the use that holds at [Trip.Confidence], and shows the likely one
// beside it. It reads no files and draws nothing.
//
// Its rooms make one of the other: build a problem of trip and places, read an
// itinerary out of a plan, answer both in one go with what a person asks next,
// and onward the rest of a trip on the road.
//
// Unless a name says otherwise, distances along the route are kilometres,
// amounts are litres (ampere-hours for the battery), times are local to the
// place, points are orb.Point{longitude, latitude}.
package trip
