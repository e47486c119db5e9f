// Package read reads a plan of a built trip back as people do: days, calls,
// levels, and what to mind.
//
//	it, err := read.Itinerary(b, plan)
package read
