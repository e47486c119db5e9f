// Package hours reads opening hours as OpenStreetMap states them and says when
// a place is open.
//
// In comes a text of the opening_hours specification
// (https://wiki.openstreetmap.org/wiki/Key:opening_hours/specification), out
// goes a [Schedule], which is asked for windows. The package owns the public
// holidays and borders that a text may depend on, and the sun. Read rule.go
// first, then parse.go and eval.go.
//
//	schedule, err := hours.Parse("Mo-Fr 08:00-18:00; PH off")
//	windows, known := schedule.Windows(monday, 5, hours.Where{Country: "AD"})
//
// Times are local to the place, in minutes of the clock on the wall since
// 00:00 of the first day; a day has 1440 of them, also when the clocks change.
//
// Decisions:
//
//   - Never "open" by guess: every possible reading. Uncertain holidays and unstated zones are each evaluated; where the answers
//     differ the state is unknown, as it is at an open end, in school holidays, in the weather. What has two readings is refused.
//     Price: fewer places with hours, and up to eighty evaluations of a day.
//   - A list of unlike things ("Mo-We PH", "Apr-Jun,Aug 10"), ends whose order depends on the year ("easter-Apr 20") and weeks
//     that descend are refused; a range of the sun that would fill the day ("sunset-21:00" in June) is unknown, and an end that
//     is open reaches into the times after it. Held against opening_hours.js, whose faults reference_test.go names one by one.
//     Price: of its grammar at random a quarter is refused, of what people write next to nothing.
//   - Holidays were written from memory with the rules of npm date-holidays at hand. Price: the comparison with it is no
//     independent proof.
//   - Borders to about a kilometre; within 3 km of one a place may lie on either side. Price: 45 kB, and unknown holidays there.
//
// Files, each using only those above it:
//
//   - calendar.go: days, and Easter
//   - state.go: what one can ask, and the answers
//   - sun.go: sunrise and sunset
//   - rule.go: what a text is made of
//   - schedule.go: a text that has been read
//   - scan.go: a text in words
//   - parser.go: how one walks over the words
//   - parse_times.go: times
//   - parse_days.go: weekdays, holidays, weeks
//   - doubts.go: dates that are read in two ways
//   - parse_dates.go: dates and years
//   - parse.go: rules
//   - borders.go: the country of a place
//   - holidays.go: the holidays of a country
//   - holiday_years.go: those of a place and year
//   - reading.go: one way in which what is unknown may be
//   - match.go: whether a rule speaks of a day
//   - eval.go: what all rules say of a day, in all readings
//   - windows.go: when a place is open
package hours
