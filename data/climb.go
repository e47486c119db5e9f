package data

import "math"

// climbM: a rise or fall counts from here on. Heights of a track wobble by some
// metres, which would add up to hills on a plain; from memory.
const climbM = 10

// Climb is how many metres the route rises and falls in all, as far as its
// heights say; 0 where they say nothing. Each part is counted for itself. Rises and
// falls of less than 10 m between two turning points are not counted.
func (r Route) Climb() (upM, downM float64) {
	for _, part := range r.Heights {
		low, high := math.NaN(), math.NaN() // since the last turn that counted
		rising, falling := false, false
		for _, h := range part {
			switch {
			case h != h:
				continue
			case low != low:
				low, high = h, h
			}
			switch {
			case rising && h > high:
				upM, high = upM+h-high, h
			case falling && h < low:
				downM, low = downM+low-h, h
			case !rising && h-low >= climbM:
				upM, high, rising, falling = upM+h-low, h, true, false
			case !falling && high-h >= climbM:
				downM, low, rising, falling = downM+high-h, h, false, true
			}
			if !rising {
				low = math.Min(low, h)
			}
			if !falling {
				high = math.Max(high, h)
			}
		}
	}
	return upM, downM
}
