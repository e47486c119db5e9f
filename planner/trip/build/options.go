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
	Ease      Ease       // of what the trip is asked
}

// Ease is what a trip gives up that has no plan with it. The zero value: nothing.
type Ease struct {
	ShortMoves bool // two nights may be near each other, if not at one place
	LateKeys   bool // the keys may be given back late
}
