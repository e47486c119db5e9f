package trip

// An Axis turns km along the route into the planner's km, on which only what is
// driven has length: a ferry is a [Metre] long, and that metre holds its minutes.
// So nothing that a kilometre uses is used at sea, and the sea counts for no day's
// kilometres. Both directions are straight between the ends of ferries.
type Axis struct {
	LengthKm float64 // of the route
	Ferries  []Sailed
}

// Sailed is a crossing with the planner's km at which it begins.
type Sailed struct {
	Crossing
	At float64
}

// Metre, in km, is the piece of the planner's way in which time passes without
// driving.
const Metre = 0.001

// NewAxis of a route of lengthKm with ferries that ascend and lie on it.
func NewAxis(lengthKm float64, ferries []Crossing) Axis {
	a := Axis{LengthKm: lengthKm}
	gone := 0.0
	for _, f := range ferries {
		a.Ferries = append(a.Ferries, Sailed{f, f.FromKm - gone})
		gone += f.ToKm - f.FromKm - Metre
	}
	return a
}

// Driven is the planner's km of a position of the route.
func (a Axis) Driven(km float64) float64 {
	gone := 0.0
	for _, f := range a.Ferries {
		if km <= f.FromKm {
			break
		}
		if km < f.ToKm {
			return f.At + Metre*(km-f.FromKm)/(f.ToKm-f.FromKm)
		}
		gone += f.ToKm - f.FromKm - Metre
	}
	return km - gone
}

// Route is the inverse of Driven.
func (a Axis) Route(km float64) float64 {
	gone := 0.0
	for _, f := range a.Ferries {
		if km <= f.At {
			break
		}
		if km < f.At+Metre {
			return f.FromKm + (km-f.At)/Metre*(f.ToKm-f.FromKm)
		}
		gone += f.ToKm - f.FromKm - Metre
	}
	return km + gone
}

// Between lists the ferries that begin from one of the planner's km on, before
// another; half a metre is rounding.
func (a Axis) Between(from, to float64) []Sailed {
	var out []Sailed
	for _, f := range a.Ferries {
		if f.At > from-Metre/2 && f.At < to-Metre/2 {
			out = append(out, f)
		}
	}
	return out
}

// AtSea finds the ferry on which a position of the route is.
func (a Axis) AtSea(km float64) (f Sailed, ok bool) {
	for _, f := range a.Ferries {
		if km > f.FromKm && km < f.ToKm {
			return f, true
		}
	}
	return Sailed{}, false
}
