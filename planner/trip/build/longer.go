package build

import (
	"slices"
	"ullage/geo"
	"ullage/planner"
	"ullage/planner/trip"
)

// longerStays lists the stays of more than one night that are worth offering:
// only if the wishes ask for more nights than the daily limits force, and no
// longer than what is then left over: each number of nights of a fortnight, then whole weeks,
// and all that is left.
func (c *Course) longerStays(o offer) []int {
	if o.night == nil {
		return nil
	}
	most := c.Trip.Stays.MinNights - max(c.forcedNights(), 1) + 1
	if o.longest > 0 {
		most = min(most, o.longest)
	}
	out := c.wishedNights(o.place)
	for n := 2; n <= most; n++ {
		if n <= 14 || n%7 == 0 || n == most {
			out = append(out, n)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// about says whether a wish is about a place.
func about(w trip.Wish, p *trip.Place) bool {
	return w.Place != "" && w.Place == p.ID || w.WithinKm > 0 && geo.DistanceM(w.Near, p.Point) <= 1000*w.WithinKm
}

// wishedNights are the lengths of stay that wishes want at a place.
func (c *Course) wishedNights(p *trip.Place) []int {
	var out []int
	for _, w := range c.Trip.Wishes {
		if w.Nights > 1 && about(w, p) {
			out = append(out, w.Nights)
		}
	}
	return out
}

// longer is a stop for a stay of several nights. Its services come with the
// stay: who does not stay uses the stop of one night.
func (c *Course) longer(s planner.Stop, o offer, id trip.StopID) planner.Stop {
	s.ID = id.String()
	s.Night = c.Nights(o.place, o.km, id.Nights)
	s.Serves = slices.Clone(s.Serves)
	for i := range s.Serves {
		s.Serves[i].GuestsOnly = true
	}
	return s
}
