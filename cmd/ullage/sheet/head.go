package sheet

import (
	"fmt"
	"strings"

	"ullage/planner"
	"ullage/planner/trip"
)

func (p *sheet) head(t trip.Trip) {
	it := p.it
	p.line("%s", it.Name)
	p.line("%s", strings.Repeat("=", len([]rune(it.Name))))
	v := t.Vehicle
	p.line("%s, %s high, %s wide, %s long, %s", v.Name, p.say.Quantity(v.HeightM, "m", 2), p.say.Quantity(v.WidthM, "m", 2), p.say.Quantity(v.LengthM, "m", 2), p.say.Quantity(v.MassKg, "kg", 0))
	people := count(t.Party.Adults, "adult", "adults")
	if n := t.Party.Children; n > 0 {
		people += ", " + count(n, "child", "children")
	}
	p.line("%s; route of %s; from %s", people, p.say.Quantity(it.LengthKm, "km", 1), p.say.LongDate(t.Start))
	p.scales()
	if len(it.Days) == 0 {
		p.line("")
		return
	}
	c := it.Parts
	p.line("%s", verdict(it))
	p.line("  goods %.2f, fees %.2f, nights %.2f, time %.2f, missing at the end %.2f", c.Goods, c.Fees, c.Nights, c.Time, c.Refill)
	p.line("")
}

// verdict says what the plan costs and how good it is.
func verdict(it trip.Itinerary) string {
	s := fmt.Sprintf("Counts as %.2f %s; ", it.Cost, it.Currency)
	if it.Status == planner.Optimal {
		return s + "no plan costs less"
	}
	return s + fmt.Sprintf("no plan costs less than %.2f (this one is at most %.1f %% off)", it.Bound, 100*(it.Cost-it.Bound)/max(it.Cost, 1e-9))
}

// scales prints the mass, if it is known.
func (p *sheet) scales() {
	if w := p.it.Weight; w != nil {
		p.line("On the scales at the start about %s of %s", p.say.Quantity(w.Kg, "kg", 0), p.say.Quantity(w.AllowedKg, "kg", 0))
	}
}
