package build

import (
	"time"
	"ullage/planner/trip"
)

// Hours says when a place is open over a number of days: windows in minutes
// since 00:00 local of from's day, ascending. known is false if the place's
// hours cannot be told; then windows mean nothing.
type Hours func(p trip.Place, from time.Time, days int) (windows [][2]float64, known bool)

// Options of [Trip]. The zero value is valid.
type Options struct {
	Hours     Hours      // nil: no opening hours are known
	Roads     trip.Roads // nil: ways to places are estimates
	MostStops int        // more are refused; 0: [planner.MostStops]
}
