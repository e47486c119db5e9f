// Package read reads a plan of a built trip back as people do: days, calls,
// levels, the end, and what to take care of, all of it as facts.
//
//	it := read.Itinerary(b, plan, backup.Closures(b.Whole(), plan))
//
// What comes in are [build.Built] and a plan of its problem that was audited, with what
// becomes of the trip if a stop is closed. What goes out is a [trip.Itinerary].
// Nothing is decided here that a plan depends on. Read itinerary.go first, then call.go.
//
// Decisions. No sentence is made here: a kind is a constant beside the code that
// makes the fact, and app/say has its words. At a stop there is one line of care for each
// thing done there; the how-tos explain it once. Bands are drawn from the same uses that the
// problem was built with: the planned level is the worse edge of the band.
//
// Files, each using only those above it:
//
//   - estimates.go: what the distances off the route are
//   - reader.go: what all readers ask of a built trip
//   - band.go: a tank at least, likely and planned use
//   - conditions.go: what a vehicle has and a season brings
//   - counts.go: what the plan counts with
//   - task.go: what is done to a tank at a stop
//   - data.go: what the map says about a call
//   - fallback.go: where to go if a place is closed
//   - ferry.go: ferries on the way
//   - cautions.go: what to take care of on the whole trip
//   - howto.go: how things are done, and what to take care of there
//   - doubt.go: what to ask before one relies on a place
//   - call.go: one stop
//   - here.go: why a stop is made
//   - days.go: days
//   - station.go: the last place for fuel
//   - handback.go: the last morning
//   - strips.go: levels along the trip
//   - why.go: why there is no plan
//   - itinerary.go: all of it
package read
