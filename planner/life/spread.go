package life

import "math"

// DefaultConfidence is the share of trips on which a tank's use stays within
// the use that is planned with.
const DefaultConfidence = 0.90

// A Spread says how far a use can be off, as standard deviations relative to
// the likely use. The zero value is exact.
type Spread struct {
	Trip float64 `json:"trip,omitempty"` // the same error on every day of the trip: how these people shower, how this vehicle burns
	Day  float64 `json:"day,omitempty"`  // a new error every day (every 100 km for driving), which evens out over many
}

// over is the relative standard deviation of the use of n days together.
func (s Spread) over(n float64) float64 { return math.Sqrt(s.Trip*s.Trip + s.Day*s.Day/max(n, 1)) }

// Factor is what the likely use is multiplied with so that the use of n days
// together stays below it with the given confidence. 0.5 gives 1. n below 1
// counts as 1; confidence is kept within 0.01 to 0.999.
//
// Uses are taken as log-normal around the likely one: they never become
// negative, and twice is as likely as half.
//
// A trip with several tanks holds all of them with less than the confidence of each.
func (s Spread) Factor(confidence, n float64) float64 { return factor(confidence, s.over(n)) }

func factor(confidence, relative float64) float64 {
	p := min(max(confidence, 0.01), 0.999)
	z := math.Sqrt2 * math.Erfinv(2*p-1)
	return math.Exp(z * math.Sqrt(math.Log1p(relative*relative)))
}
