package build

import (
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// An offer is what a place can do for this trip, wherever the route passes it.
type offer struct {
	near
	excluded *fact.Fact // why the vehicle or the person cannot use the place; nil: they can
	serves   []planner.Service
	fee      float64
	open     [][2]float64
	hours    bool // opening hours are known
	night    *planner.Night
	km       float64 // the first pass: about when the night is
	longest  int     // nights that the place allows; 0: any
}

func (o offer) empty() bool { return len(o.serves) == 0 && o.night == nil }

// offers is the fourth stage: what each place can do for the trip. Those that do
// nothing are dropped.
func (c *Course) offers(list []near) []offer {
	out := make([]offer, 0, len(list))
	for _, n := range list {
		if o := c.offer(n); !o.empty() {
			out = append(out, o)
		}
	}
	return out
}

// offer decides what a place can do for the trip.
func (c *Course) offer(n near) offer {
	p, o := n.place, offer{near: n, km: n.passes[0].AlongM / 1000}
	o.night = c.night(p, o.km)
	if p.Stay != nil {
		o.longest = longestStay(p.Stay.MaxStay)
	}
	o.serves = c.serves(p, o.night)
	if o.empty() {
		return o
	}
	if p.Stay == nil {
		o.fee = c.callFee(p)
	}
	if o.excluded = c.refused(p); o.excluded == nil && c.Hours != nil && p.Hours != "" {
		c.openings(&o)
	}
	return o
}

// openings asks when the place of an offer is open.
func (c *Course) openings(o *offer) {
	days := c.Days()
	o.open, o.hours = c.Hours(*o.place, c.Start, days)
	switch {
	case !o.hours:
		o.open = nil
	case len(o.open) == 0:
		o.excluded = because(shut, fact.V{"tag": fact.Text("opening_hours=" + o.place.Hours)})
	case len(o.open) == 1 && o.open[0][0] <= 0 && o.open[0][1] >= float64(days)*1440:
		o.open = nil // always open
	}
}

// serves lists the tanks that a place restores, in the vehicle's order: what
// the data affirm and what is likely, never what is unknown. What is for guests
// it restores on a night only.
func (c *Course) serves(p *trip.Place, night *planner.Night) []planner.Service {
	var out []planner.Service
	for _, k := range c.Trip.Vehicle.Tanks {
		o, _ := p.Offer(k.ID)
		s := trip.KindOfTank(k.ID)
		guests := o.Guests && !p.Kind.Custom().Customer
		if s.ByNight || !(o.Answer == trip.Yes || o.Answer == trip.Unknown && o.Likely) || guests && night == nil {
			continue
		}
		x := planner.Service{Tank: k.ID, Min: s.Minutes, GuestsOnly: guests}
		if k.Kind == planner.Supply {
			x.Price = c.price(k.ID, o)
		}
		if c.weighs(k) { // sold by the unit or not: half a tank at a time, for the mass to be a limit alone
			x.Fee, x.Price = x.Price*k.Capacity/2, 0
		}
		out = append(out, x)
	}
	return out
}

// weighs says whether a limit of mass counts what is in a tank.
func (c *Course) weighs(k trip.Tank) bool {
	return c.Trip.Vehicle.EmptyKg > 0 && trip.KindOfTank(k.ID).Onboard && life.KgPer(k.ID) > 0
}

// price is the place's own, else the trip's, else the default.
func (c *Course) price(tank string, o trip.Offer) float64 {
	if v, ok := trip.ParseAmount(o.PriceTag, c.Trip.Currency, trip.LitreUnits...); ok {
		return v
	}
	v, _ := c.Trip.Price(tank)
	return v
}

// callFee is what a call costs besides the goods.
func (c *Course) callFee(p *trip.Place) float64 {
	if p.Fee == trip.No {
		return 0
	}
	if v, ok := trip.ParseAmount(p.Charge, c.Trip.Currency); ok {
		return v
	}
	return p.Kind.Custom().CallFee
}
