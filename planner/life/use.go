package life

import "math"

// A Use is what a part of a trip takes from one tank: litres, ampere-hours at
// 12 V for the battery. Negative restores. The zero value uses nothing.
type Use struct {
	Tank   string  `json:"tank"` // its id: diesel
	Likely float64 `json:"likely"`
	Parts  []Part  `json:"parts,omitempty"` // what it is made of; they add up to Likely
}

// A Part of a use: "heating", "fridge". Parts err independently of each other.
type Part struct {
	Name   string  `json:"name"`
	Amount float64 `json:"amount"`
	Spread Spread  `json:"spread"`
}

// A Band is a use with the limits that it stays within.
type Band struct {
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
}

// A Turn says which way a band goes.
type Turn string

const (
	Used   Turn = "use"  // at the likely use already
	Gained Turn = "gain" // even as planned
	Mixed  Turn = "turn" // the likely is a gain, the planned a use
)

// Turn of the band: High is at least Likely.
func (b Band) Turn() Turn {
	switch {
	case b.High < 0:
		return Gained
	case b.Likely < 0:
		return Mixed
	}
	return Used
}

// Sizes are the likely and the planned without their signs.
func (b Band) Sizes() (likely, planned float64) { return math.Abs(b.Likely), math.Abs(b.High) }

// NewUse adds up parts into a use and leaves out those that are nothing.
func NewUse(tank string, parts ...Part) Use {
	u := Use{Tank: tank}
	for _, p := range parts {
		if p.Amount != 0 {
			u.Likely += p.Amount
			u.Parts = append(u.Parts, p)
		}
	}
	return u
}

// Planned is the use to plan with: the likely use at the confidence, where n
// days (or 100 km) like it come between two services. What restores is counted
// with care too: less of it. The price of caution is Planned − Likely.
func (u Use) Planned(confidence, n float64) float64 {
	takes, gives, takesBy, givesBy := u.sides(confidence, n)
	return takes*takesBy - gives/givesBy
}

// Band is the middle range that n days of this use stay within with the given
// confidence on either side: at 0.9, below Low in one trip of ten and above
// High in one of ten.
func (u Use) Band(confidence, n float64) Band {
	c := max(confidence, 1-confidence)
	takes, gives, takesBy, givesBy := u.sides(c, n)
	return Band{takes/takesBy - gives*givesBy, u.Likely, takes*takesBy - gives/givesBy}
}

// sides adds up what takes and what gives, with the factor of each.
func (u Use) sides(confidence, n float64) (takes, gives, takesBy, givesBy float64) {
	var takesV, givesV float64
	for _, p := range u.Parts {
		sd := p.Amount * p.Spread.over(n)
		if p.Amount > 0 {
			takes += p.Amount
			takesV += sd * sd
		} else {
			gives -= p.Amount
			givesV += sd * sd
		}
	}
	relative := func(v, sum float64) float64 {
		if sum == 0 {
			return 0
		}
		return math.Sqrt(v) / sum
	}
	return takes, gives, factor(confidence, relative(takesV, takes)), factor(confidence, relative(givesV, gives))
}

// Spread is how far the whole use can be off where it only takes or only
// gives; of a mixture it is that of the larger side.
func (u Use) Spread() Spread {
	var trip, day, takes, gives float64
	for _, p := range u.Parts {
		takes, gives = takes+max(p.Amount, 0), gives-min(p.Amount, 0)
	}
	for _, p := range u.Parts {
		if (p.Amount > 0) == (takes >= gives) {
			trip += math.Pow(p.Amount*p.Spread.Trip, 2)
			day += math.Pow(p.Amount*p.Spread.Day, 2)
		}
	}
	sum := max(takes, gives)
	if sum == 0 {
		return Spread{}
	}
	return Spread{math.Sqrt(trip) / sum, math.Sqrt(day) / sum}
}

// Lasts is for how many such days (or 100 km) a headroom lasts, at least 1:
// the n of [Use.Planned] for a tank that is served when it has to be.
func (u Use) Lasts(headroom float64) float64 {
	if !(u.Likely > 0) {
		return 1
	}
	return max(headroom/u.Likely, 1)
}

// Times is k of this use, with the same spread.
func (u Use) Times(k float64) Use {
	out := Use{Tank: u.Tank, Likely: k * u.Likely}
	for _, p := range u.Parts {
		p.Amount *= k
		out.Parts = append(out.Parts, p)
	}
	return out
}

// Uses are the uses of all tanks, at most one each.
type Uses []Use

// Of is the use of a tank; nothing where there is none.
func (us Uses) Of(tank string) Use {
	for _, u := range us {
		if u.Tank == tank {
			return u
		}
	}
	return Use{Tank: tank}
}
