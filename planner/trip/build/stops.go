package build

import (
	"cmp"
	"ullage/geo"
	"ullage/planner"
	"ullage/planner/trip"
)

// Stops are the places of use, at each pass, and the planner's stops there.
type Stops struct {
	Candidates []trip.Candidate // every place of use in the corridor, at each pass, ascending Km
	Around     []planner.Stop   // all of use, also those that the problem leaves out
	Calls      map[string]Call  // by stop id
	Lists      [][]string       // stops of which one is required
}

// A Call is what is known about one stop of the problem.
type Call struct {
	Place     *trip.Place
	Candidate int         // index in Stops.Candidates
	Hours     bool        // opening hours are known
	Km        float64     // where the nights were asked for
	Entry     *trip.Entry // nil: not known
}

const (
	// detourKmh is the speed off the route: 50 rural, 25 town (Europe, from memory).
	detourKmh = 40.0
	// stopMin is spent by any call: turn in, wait, pay, turn out. From memory.
	stopMin = 4.0
)

// A gathering is stops while they are gathered along a course.
type gathering struct {
	*Course
	Stops
}

// tooMany is the error that offers make more stops than can be weighed: it is seen
// before there is anything of them.
func (b *gathering) tooMany(offers []offer) error {
	n := 0
	for _, o := range offers {
		if o.excluded == nil {
			n += len(o.passes) * (1 + len(b.longerStays(o)))
		}
	}
	if n > b.MostStops {
		return &planner.TooMany{Kind: planner.ManyStops, Have: n, Most: b.MostStops}
	}
	return nil
}

// add makes an offer at the n-th pass of the route a candidate and its
// stops: one, and one more for each longer stay that the trip can need.
func (b *gathering) add(o offer, n int, pass geo.Pass) {
	id := trip.StopID{Place: o.place.ID, Pass: n + 1}
	// A hair over the end is rounding: the pass lies on the line.
	km := min(max(pass.AlongM/1000, 0), b.Axis.LengthKm)
	c := trip.Candidate{Place: o.place.ID, Stop: id.String(), Kind: o.place.Kind, Name: o.place.Name, Point: o.place.Point,
		Km: km, OffKm: pass.OffM / 1000, Night: o.night != nil, Excluded: o.excluded}
	for _, x := range o.serves {
		c.Tanks = append(c.Tanks, x.Tank)
	}
	b.Candidates = append(b.Candidates, c)
	if o.excluded != nil {
		return
	}
	detour := 2 * c.OffKm * cmp.Or(b.Trip.Circuity, trip.DefaultCircuity)
	base := planner.Stop{ID: c.Stop, Km: b.Axis.Driven(km), DetourKm: detour, DetourMin: detour / detourKmh * 60,
		StopMin: stopMin, Fee: o.fee, Open: o.open, Serves: o.serves, Night: o.night}
	base.Serves = append([]planner.Service{}, base.Serves...) // spare is set per stop; null is no list
	call := Call{Place: o.place, Candidate: len(b.Candidates) - 1, Hours: o.hours, Km: o.km}
	b.Around, b.Calls[base.ID] = append(b.Around, base), call
	for _, id.Nights = range b.longerStays(o) {
		s := b.longer(base, o, id)
		b.Around, b.Calls[s.ID] = append(b.Around, s), call
	}
}

// afterSettingOff moves stops out of the first metre, where the clock is wrong.
// What lies before a ferry there can no longer be called at.
func (b *gathering) afterSettingOff() {
	if b.Late() == 0 {
		return
	}
	sailing := len(b.Axis.Between(0, trip.Metre)) > 0
	var out []planner.Stop
	for _, s := range b.Around {
		if sailing && s.Km < trip.Metre/2 {
			b.Candidates[b.Calls[s.ID].Candidate].Excluded = because(aboard, nil)
			delete(b.Calls, s.ID)
			continue
		}
		s.Km = max(s.Km, trip.Metre)
		out = append(out, s)
	}
	b.Around = out
}
