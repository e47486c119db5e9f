package audit

import (
	"math"
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

// byDate: nobody drives on a day of rest; one is where one wants to be, as long and on
// the day that was wished for; and hook-up is there from the day on that asks for it.
func (c *checker) byDate() {
	for _, w := range c.trip.Wishes {
		met := w.Place == "" && w.WithinKm == 0 || w.On != "" && w.On < c.trip.Start
		for _, d := range c.it.Days {
			if w.Rest == d.Date && d.DriveKm > 0 {
				c.breaks(Broken{Rule: RuleWish, Day: d.Number})
			}
			for _, x := range d.Calls {
				met = met || meets(w, d, x)
				if w.HookUpFrom != "" && x.Night && d.Date.Plus(x.Nights-1) >= w.HookUpFrom && c.place(x.Place).Stay.HookUp != trip.Yes {
					c.breaks(Broken{Rule: RuleWish, Day: d.Number, Stop: x.Stop})
				}
			}
		}
		if !met {
			c.breaks(Broken{Rule: RuleWish, Stop: w.Place})
		}
	}
}

// meets says whether a call of a day is what a wish about a place wants.
func meets(w trip.Wish, d trip.Day, x trip.Call) bool {
	here := w.Place == x.Place || w.WithinKm > 0 && x.Night && apartKm(w.Near, x.Point) <= 1.001*w.WithinKm
	on := w.On == "" || d.Date <= w.On && w.On <= d.Date.Plus(max(x.Nights-1, 0))
	return here && on && (w.Nights == 0 || w.Nights == x.Nights)
}

// apartKm is how far two points lie apart, on a sphere of 6371 km.
func apartKm(p, q [2]float64) float64 {
	const rad = math.Pi / 180
	a := math.Pow(math.Sin((q[1]-p[1])*rad/2), 2) + math.Cos(p[1]*rad)*math.Cos(q[1]*rad)*math.Pow(math.Sin((q[0]-p[0])*rad/2), 2)
	return 2 * 6371 * math.Asin(math.Sqrt(a))
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
