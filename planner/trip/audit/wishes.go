package audit

import (
	"slices"

	"ullage/planner"
	"ullage/planner/trip"
)

// wishes: places that must be called at are, those to avoid are not, and no call is at
// a place that the vehicle does not fit, or that does not have what is done there.
func (c *checker) wishes() {
	var seen []string
	for _, d := range c.it.Days {
		for _, x := range d.Calls {
			seen = append(seen, x.Place)
			if p := c.place(x.Place); slices.Contains(c.trip.Avoid, x.Place) || !c.fits(p) || !c.has(p, x) {
				c.breaks(Broken{Rule: RuleWish, Day: d.Number, Stop: x.Stop})
			}
		}
	}
	for _, id := range c.trip.Require {
		if !slices.Contains(seen, id) {
			c.breaks(Broken{Rule: RuleWish, Stop: id})
		}
	}
}

func (c *checker) fits(p *trip.Place) bool {
	v, l := c.trip.Vehicle, p.Limits
	return (l.HeightM == 0 || v.HeightM <= l.HeightM) && (l.WidthM == 0 || v.WidthM <= l.WidthM) && (l.LengthM == 0 || v.LengthM <= l.LengthM) && (l.MassT == 0 || v.MassKg <= 1000*l.MassT)
}

// has: what is done at a call the data affirm, or call likely; unknown is never yes.
func (c *checker) has(p *trip.Place, x trip.Call) bool {
	for _, t := range x.Tasks {
		if t.Verb == trip.LetOut || t.Verb == trip.Charge {
			continue
		}
		if o, ok := p.Offer(t.Tank); !ok || o.Answer == trip.No || o.Answer == trip.Unknown && !o.Likely {
			return false
		}
	}
	return true
}

// closed: a call is made while the place is open.
func (c *checker) closed(open Open) {
	if open == nil {
		return
	}
	for _, d := range c.it.Days {
		for _, x := range d.Calls {
			windows, known := open(*c.place(x.Place), c.trip.Start.Time(), len(c.it.Days)+2)
			if !known {
				continue
			}
			to := x.LeaveMin
			if x.Night {
				to = x.ArriveMin
			}
			if !slices.ContainsFunc(windows, func(w [2]float64) bool { return w[0] <= to+0.01 && w[1] >= x.ArriveMin-0.01 }) {
				c.breaks(Broken{Rule: RuleClosed, Day: d.Number, Stop: x.Stop, Have: x.ArriveMin})
			}
		}
	}
}

// cost: the stops and what is missing at the end are what there is to pay.
func (c *checker) cost() {
	p := c.it.Parts
	paid := p.Refill
	for _, d := range c.it.Days {
		for _, x := range d.Calls {
			paid += x.Cost
		}
	}
	if !near(p.Goods+p.Fees+p.Nights+p.Refill+p.Time, c.it.Cost) {
		c.breaks(Broken{Rule: RuleCost, Have: p.Goods + p.Fees + p.Nights + p.Refill + p.Time, Need: c.it.Cost})
	}
	if !near(paid, c.it.Cost-p.Time) {
		c.breaks(Broken{Rule: RuleCost, Have: paid, Need: c.it.Cost - p.Time})
	}
	if c.it.Status == planner.Optimal && c.it.Least == nil && c.it.Cost-c.it.Bound > 0.01 {
		c.breaks(Broken{Rule: RuleCost, Have: c.it.Bound, Need: c.it.Cost})
	}
}
