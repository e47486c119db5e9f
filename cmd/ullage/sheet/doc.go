// Package sheet prints an itinerary for people who follow it on paper.
//
// What comes in is a trip with its itinerary, and a voice: language and units.
// What goes out is text of 96 columns: what the trip is and costs, each day with
// its calls, the levels at the end, the return, and what stands behind the days:
// cautions, what the plan counts with, how things are done, checklists.
//
// Other plans and the price of safety are known later than the plan and are
// printed after it ([PrintMore]). Words, numbers, units and dates come from
// app/say; the sheet only puts them in their place.
//
// Read print.go first.
//
// Files, each using only those above it:
//
//   - sheet.go: lines of text, times and counts
//   - units.go: sentences that are still text, in the units of the voice
//   - head.go: what the trip is and costs
//   - behind.go: stops behind, and what the gauges taught
//   - refusal.go: why there is no plan
//   - call.go: one stop
//   - day.go: one day
//   - end.go: what stands behind the days
//   - more.go: other plans
//   - print.go: the sheet
package sheet
