// Package hours reads opening hours as OpenStreetMap states them and says when
// a place is open.
//
// It owns the opening_hours specification
// (https://wiki.openstreetmap.org/wiki/Key:opening_hours/specification), the
// public holidays it may refer to, and the sun. It never says "open" by guess:
// what it cannot read is an error, and a time at which the state depends on
// something nobody has told it (a holiday of an unknown region, school
// holidays, an open end, the weather) is unknown.
//
//	schedule, err := hours.Parse("Mo-Fr 08:00-18:00; PH off")
//	windows, known := schedule.Windows(monday, 5, hours.Where{Country: "AD"})
//
// Times are local to the place, in minutes of the clock on the wall since
// 00:00 of the first day; a day has 1440 of them, also when the clocks change.
package hours
