// Package itinerary shows a plan in words: each day with its stops and ferries, what
// it costs, what to mind, and why there is none.
//
// What comes in are an itinerary and a voice. What goes out are components, and
// messages of package model when somebody ticks, points or wants to be without a
// place. Nothing here plans, measures or keeps anything.
//
// Decisions. A caution is open where it first comes up and folded away later, or
// nobody would read the new ones. What comes after the plan (other plans, the price of
// safety) stands behind the days: nothing that is read may move. GPX is written as
// text, which spares the page an encoder.
//
// Read days.go first, then callrow.go.
//
// Files, each using only those above it:
//
//   - avoid.go: the button that plans without a place
//   - callrow.go: one stop
//   - crossing.go: one ferry
//   - days.go: day by day
//   - gpx.go: the stops for a satnav
//   - verdict.go: the plan in one line, and its cost
//   - refusal.go: why there is no plan
//   - others.go: other plans
//   - limits.go: what to mind, and what is not known
//   - handback.go: the last morning
//   - counted.go: what is planned for, by tank
//   - checklists.go: lists to tick, and how things are done
package itinerary
