package audit

// dates: days are numbered one after the other and have the dates of that.
func (c *checker) dates() {
	first := 1
	if len(c.it.Days) > 0 {
		first = c.it.Days[0].Number
	}
	for i, d := range c.it.Days {
		if d.Number != first+i {
			c.breaks(Broken{Rule: RuleDate, Day: d.Number, Have: float64(d.Number), Need: float64(first + i)})
		}
		if want := c.trip.Start.Plus(i); d.Date != want {
			c.breaks(Broken{Rule: RuleDate, Day: d.Number, Stop: string(d.Date)})
		}
	}
}
