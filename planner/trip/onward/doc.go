// Package onward makes what is left of a trip, and what the gauges say, a trip
// of its own.
//
//	rest, err := onward.From(t, it, onward.Now{Km: &km, Time: "2026-06-13T14:20"})
package onward
