package planner

// This file counts the inside of a stay: how often a tank is served there.

// MostActs is how often a tank can be served for one night and its day. Who needs
// more does not stay there with such habits. Own choice.
const MostActs = 3

// Uses is what each night of the stay takes from a tank.
func (n Night) Uses(tank string) []float64 {
	if by := n.ByNight[tank]; by != nil {
		return by
	}
	out := make([]float64, n.Nights)
	for i := range out {
		out[i] = n.Use[tank] / float64(n.Nights)
	}
	return out
}

// Acts is how often a service of the tank is paid for in the stay, and takes its
// minutes. A tank that is served on arrival is served again before each night that
// it would not last, as often as that night asks for, and before leaving. That
// depends on the stay and the tank alone, so it is counted as for a tank that
// arrives with all its headroom. No number is 0.
//
// ok is false if one night takes more than [MostActs] times what the tank has above
// its reserve: then it cannot be served there.
func (n Night) Acts(t Tank) (acts int, ok bool) {
	acts = 1
	w := Walk{Room: t.Capacity - t.Reserve}
	w.Have = w.Room
	for _, use := range n.Uses(t.ID) {
		more, ok := w.Night(use)
		if !ok {
			return 0, false
		}
		acts += more
	}
	return acts, true
}

// A Walk follows what one tank has above its reserve through the nights of a stay.
type Walk struct{ Room, Have float64 }

// Night lives one more: so often the tank is served to its brim for it, as late as
// can be. ok is false if that is too often.
func (w *Walk) Night(use float64) (acts int, ok bool) {
	if use <= w.Have+Tolerance {
		w.Have = min(w.Have-use, w.Room)
		return 0, true
	}
	if !(w.Room > 0) {
		return 0, false
	}
	for use > w.Have+Tolerance {
		if acts > 0 {
			use -= w.Have // lived until the tank is at its reserve
		}
		if acts++; acts > MostActs {
			return 0, false
		}
		w.Have = w.Room
	}
	w.Have -= use
	return acts, true
}
