// Package trip turns a trip (vehicle, people, calendar, route, places) into a
// planning problem, and a plan back into an itinerary by day.
//
// It owns what the numbers of package planner mean: which tanks a vehicle has,
// which place serves which tank, and which cautions belong to it. What people,
// weather and kilometres use it asks of package life, for vehicles that say how
// they live; the plan counts with the use that holds at [Trip.Confidence], and
// shows the likely one beside it. It reads no files and draws nothing.
//
// Unless a name says otherwise, distances along the route are kilometres,
// amounts are litres (ampere-hours for the battery), times are local to the
// place, points are orb.Point{longitude, latitude}.
//
// [Plan] does all of it; [Build] and [Built.Itinerary] are its two halves. On the
// road [Trip.Onward] makes what is left of a trip, and what the gauges say, a trip.
//
//	it, err := trip.Plan(ctx, t, places, trip.Options{Hours: hours})
//	if err != nil { return err }
//	for _, d := range it.Days {
//		for _, c := range d.Calls { fmt.Println(d.Date, c.Name, c.Tasks) }
//	}
package trip
