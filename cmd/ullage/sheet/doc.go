// Package sheet prints an itinerary for people who follow it on paper.
//
// What comes in is a trip with its itinerary, and a voice: language and units.
// What goes out is text of 96 columns: what the trip is and costs, each day with
// its calls, the levels at the end, the return, and what stands behind the days.
//
// A call says first what to do, in boxes to tick, then how to get in, what gauges
// should show, what the map says, where to go if it is closed. A caution is a line
// at its call, or the number beside its act of a line after the days where several calls share it;
// the whole of it stands once, with how the thing is done. Levels after a call are those that changed. Points are
// given as numbers beside words: on paper there is nothing to press.
//
// Words, numbers, units and dates come from app/say; the sheet puts them in
// their places. Other plans and the price of safety are known later than the
// plan and are printed after it, each as it comes ([More]); so are the reasons of a refusal ([Refusal]).
//
// Read print.go first, from its end.
//
// Files, each using only those above it:
//
//   - sheet.go: lines of text, times, levels, money
//   - head.go: what the trip is and costs
//   - task.go: one act at a call
//   - call.go: one call
//   - behind.go: stops behind, and what the gauges taught
//   - refusal.go: why there is no plan
//   - day.go: one day
//   - end.go: the levels at the end, and the return
//   - background.go: cautions, expected use, how things are done, checklists
//   - print.go: the sheet
//   - refusing.go: a sheet without a plan, as it becomes known
//   - more.go: what becomes known after the plan
package sheet
