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
// A trip with several tanks holds all of them with less than the confidence of
// each: at least 1 − Σ(1 − confidence) (Boole's inequality).
func (s Spread) Factor(confidence, n float64) float64 {
	p := min(max(confidence, 0.01), 0.999)
	z := math.Sqrt2 * math.Erfinv(2*p-1)
	v := s.over(n)
	return math.Exp(z * math.Sqrt(math.Log1p(v*v)))
}

// A Band is a use with the limits that it stays within.
type Band struct{ Low, Likely, High float64 }

// A Use is what a part of a trip takes from one tank: litres, ampere-hours at
// 12 V for the battery. Negative restores.
type Use struct {
	Tank   string  `json:"tank"` // diesel, def, lpg, fresh, grey, cassette, battery
	Likely float64 `json:"likely"`
	Spread Spread  `json:"spread"`
	Parts  []Part  `json:"parts,omitempty"` // what it is made of; they add up to Likely
}

// A Part of a use, in its unit.
type Part struct {
	Name   string  `json:"name"`
	Amount float64 `json:"amount"`
}

// Planned is the use to plan with: the likely use at the confidence, where n
// days (or 100 km) like it come between two services. What restores is counted
// with care too: less of it. The price of caution is Planned − Likely.
func (u Use) Planned(confidence, n float64) float64 {
	f := u.Spread.Factor(confidence, n)
	if u.Likely < 0 {
		return u.Likely / f
	}
	return u.Likely * f
}

// Band is the middle range that n days of this use stay within with the given
// confidence on either side: at 0.9, below Low in one trip of ten and above
// High in one of ten.
func (u Use) Band(confidence, n float64) Band {
	f := u.Spread.Factor(max(confidence, 1-confidence), n)
	low, high := u.Likely/f, u.Likely*f
	return Band{min(low, high), u.Likely, max(low, high)}
}

// Uses are the uses of all tanks, one each.
type Uses []Use

// Of is the use of a tank; the zero Use where there is none.
func (us Uses) Of(tank string) Use {
	for _, u := range us {
		if u.Tank == tank {
			return u
		}
	}
	return Use{Tank: tank}
}

// use adds up parts into a use and leaves out those that are nothing.
func use(tank string, s Spread, parts ...Part) Use {
	u := Use{Tank: tank, Spread: s}
	for _, p := range parts {
		if p.Amount != 0 {
			u.Likely += p.Amount
			u.Parts = append(u.Parts, p)
		}
	}
	return u
}
