package audit

import (
	"math"
	"slices"

	"ullage/planner/fact"

	"ullage/planner/trip"
)

// A stay is a call for the night with its day.
type stay struct {
	day int // index
	trip.Call
}

// Who moves from one place to another moves so far, or it is said.
const moveKm = 30

func (c *checker) stays() []stay {
	var out []stay
	for i, d := range c.it.Days {
		for _, x := range d.Calls {
			if x.Night {
				out = append(out, stay{i, x})
			}
		}
	}
	return out
}

// nights: each day but the last ends at a place for the night, or lies within a stay.
func (c *checker) nights() {
	stays, sum := c.stays(), 0
	left := 0 // nights of the stay that is being lived
	for i, d := range c.it.Days {
		left--
		sleeps := slices.IndexFunc(d.Calls, func(x trip.Call) bool { return x.Night })
		switch {
		case left > 0:
			if len(d.Calls) > 0 || d.DriveKm > 0 {
				c.breaks(Broken{Rule: RuleNight, Day: d.Number, Have: d.DriveKm})
			}
		case sleeps >= 0 && sleeps == len(d.Calls)-1:
			left = max(d.Calls[sleeps].Nights, 1)
			sum += left
		case sleeps >= 0 || i < len(c.it.Days)-1:
			c.breaks(Broken{Rule: RuleNight, Day: d.Number})
		}
	}
	if w := c.trip.Stays; sum < w.MinNights || w.MaxNights > 0 && sum > w.MaxNights || sum != len(c.it.Days)-1 {
		c.breaks(Broken{Rule: RuleNight, Have: float64(sum), Need: float64(w.MinNights)})
	}
	for _, s := range stays {
		c.allowed(s)
		c.arrival(s)
	}
	c.moves(stays)
}

// allowed: the place lets one stay, and is one that is wanted.
func (c *checker) allowed(s stay) {
	p, w := c.place(s.Place), c.trip.Stays
	ok := p.Stay != nil && !slices.Contains(c.trip.Avoid, p.ID)
	if ok && w.HookUp {
		ok = p.Stay.HookUp == trip.Yes
	}
	if p.Kind == trip.Campsite {
		ok = ok && w.Campsites
	} else {
		ok = ok && w.Stopovers
	}
	if !ok {
		c.breaks(Broken{Rule: RuleNight, Day: c.it.Days[s.day].Number, Stop: s.Stop})
	}
}

// arrival: nobody arrives for the night before noon or after 22:00, unless the place
// says other hours or the trip begins so late.
func (c *checker) arrival(s stay) {
	at := math.Mod(s.ArriveMin, 1440)
	begins := math.Max(c.trip.Day.DepartMin, c.trip.FromMin)
	if p := c.place(s.Place); p.Stay == nil || p.Stay.CheckIn != "" {
		return
	}
	if at < 12*60-0.01 || at > math.Max(22*60, begins+120)+0.01 {
		c.breaks(Broken{Rule: RuleHours, Day: c.it.Days[s.day].Number, Stop: s.Stop, Have: at, Need: 12 * 60})
	}
}

// moves: one stay a place, and none that is hardly worth packing up for, unless that is said.
func (c *checker) moves(stays []stay) {
	for i := 1; i < len(stays); i++ {
		a, b := stays[i-1], stays[i]
		km := c.drivenTo(b.Km) - c.drivenTo(a.Km)
		said := slices.ContainsFunc(c.it.Cautions, func(f fact.Fact) bool { return f.Kind == "move.short" })
		if km < moveKm-0.01 && (!said || a.Place == b.Place) {
			c.breaks(Broken{Rule: RuleMove, Day: c.it.Days[b.day].Number, Stop: b.Stop, Have: km, Need: moveKm})
		}
	}
}

// drivenTo is how far one has driven along the route at a km of it: ferries do not count.
func (c *checker) drivenTo(km float64) float64 {
	sailed := 0.0
	for _, d := range c.it.Days {
		for _, f := range d.Ferries {
			sailed += math.Max(0, math.Min(km, f.ToKm)-f.FromKm)
		}
	}
	return km - sailed
}
