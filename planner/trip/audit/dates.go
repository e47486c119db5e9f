package audit

// dates: days and stops are numbered one after the other, from where the trip began, and
// days have the dates of that.
func (c *checker) dates() {
	first, stops := c.trip.DoneDays+1, c.trip.DoneStops
	for i, d := range c.it.Days {
		for _, x := range d.Calls {
			if stops++; x.N != stops {
				c.breaks(Broken{Rule: RuleDate, Day: d.Number, Stop: x.Stop, Have: float64(x.N), Need: float64(stops)})
			}
		}
		if d.Number != first+i {
			c.breaks(Broken{Rule: RuleDate, Day: d.Number, Have: float64(d.Number), Need: float64(first + i)})
		}
		if want := c.trip.Start.Plus(i); d.Date != want {
			c.breaks(Broken{Rule: RuleDate, Day: d.Number, Stop: string(d.Date)})
		}
	}
}
