// Package audit checks an itinerary before anybody sees it: the sheet, not the numbers
// of the plan.
//
// What comes in are a trip, the places it may use and an itinerary. What goes out are
// the rules that the itinerary breaks ([Broken]); none is what is shown. Read sheet.go first.
//
// Decision. The auditor says again, from the sheet's own lines, what package build
// and read have made: it knows no problem, no plan and no model of use, so no mistake of
// theirs can be its own. It looks at one concern at a time over the whole trip. Price: 400
// lines that say nothing new, and a rule of the house has two homes.
//
// Files, each using only those above it:
//
//   - broken.go: the rules, and what breaks one
//   - dates.go: days and dates
//   - road.go: kilometres and minutes
//   - nights.go: where, when and how long one stays
//   - tanks.go: levels, and what is done to them
//   - mass.go: the vehicle on the scales
//   - wishes.go: what is wanted, and what it costs
//   - sheet.go: all of it
package audit
