package trip

// An axis turns km along the route into the planner's km, on which only what is
// driven has length: a ferry is [metre] long, and that metre holds its minutes.
// So nothing that a kilometre uses is used at sea, and the sea counts for no day's
// kilometres. Both directions are straight between the ends of ferries.
type axis struct {
	lengthKm float64 // of the route
	ferries  []sailed
}

// sailed is a crossing with the planner's km at which it begins.
type sailed struct {
	Crossing
	at float64
}

// metre, in km, is the piece of the planner's way in which time passes without
// driving.
const metre = 0.001

// newAxis of a route of lengthKm with ferries that ascend and lie on it.
func newAxis(lengthKm float64, ferries []Crossing) axis {
	a := axis{lengthKm: lengthKm}
	gone := 0.0
	for _, f := range ferries {
		a.ferries = append(a.ferries, sailed{f, f.FromKm - gone})
		gone += f.ToKm - f.FromKm - metre
	}
	return a
}

// driven is the planner's km of a position of the route.
func (a axis) driven(km float64) float64 {
	gone := 0.0
	for _, f := range a.ferries {
		if km <= f.FromKm {
			break
		}
		if km < f.ToKm {
			return f.at + metre*(km-f.FromKm)/(f.ToKm-f.FromKm)
		}
		gone += f.ToKm - f.FromKm - metre
	}
	return km - gone
}

// route is the inverse of driven.
func (a axis) route(km float64) float64 {
	gone := 0.0
	for _, f := range a.ferries {
		if km <= f.at {
			break
		}
		if km < f.at+metre {
			return f.FromKm + (km-f.at)/metre*(f.ToKm-f.FromKm)
		}
		gone += f.ToKm - f.FromKm - metre
	}
	return km + gone
}

// between lists the ferries that begin from one of the planner's km on, before
// another; half a metre is rounding.
func (a axis) between(from, to float64) []sailed {
	var out []sailed
	for _, f := range a.ferries {
		if f.at > from-metre/2 && f.at < to-metre/2 {
			out = append(out, f)
		}
	}
	return out
}

// atSea finds the ferry on which a position of the route is.
func (a axis) atSea(km float64) (f sailed, ok bool) {
	for _, f := range a.ferries {
		if km > f.FromKm && km < f.ToKm {
			return f, true
		}
	}
	return sailed{}, false
}
