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
//
// Read trip.go first, then place.go and itinerary.go.
//
// Decisions. What is said is a fact, never a sentence: app/say alone makes words.
// What is known about a tank wherever it is stands in one row of tankkind.go, so
// that no code asks which tank it is. A date, a habit, a verb is a type of its own, and a
// trip file says them as it always did. A stop's id is a struct; the text that
// planner and files know is written and read in stopid.go alone.
//
// Files, each using only those above it:
//
//   - date.go: a local day, and a time of it
//   - ferry.go: parts of the route that are not driven
//   - axis.go: km of the route as km of the planner
//   - placekind.go: what a place is, and what is usual there
//   - tankkind.go: what is known about a tank wherever it is
//   - ranges.go: what its numbers may be
//   - note.go: answers, and what people know of a place
//   - place.go: what the map data say about a place
//   - noted.go: places as people know them
//   - stopid.go: the name of a stop
//   - vehicle.go: a model of the fleet
//   - fleet.go: the models that come with the tool
//   - wishes.go: people, days and nights
//   - services.go: what a stop and a night cost where nobody says
//   - trip.go: all that a person decides
//   - money.go: prices as tagged
//   - roads.go: what a road network is asked
//   - itinerary.go: a plan as people read it
//   - cause.go: what a refusal lies in
//   - use.go: habits of vehicles that state their use
//   - usage.go: what a trip uses
//   - validate.go: what is wrong with a trip, and what to do
package trip
