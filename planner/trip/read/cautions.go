package read

import (
	"fmt"
	"strings"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// tripCautions belong to every trip; those of its stops are the how-tos of
// package life. They are common practice, no source; none replaces the vehicle's
// handbook, local rules or a licensed person.
var tripCautions = []string{
	"Map data can be old or wrong: a place may be closed, full, frozen off or too low. The sign on the spot decides. Know the height on the vehicle's plate, and add what is on the roof.",
	"Before you drive off: gas off, steps in, windows and hatches closed, awning in, cable and hose off, everything heavy tied down.",
	"Hot water: a boiler that stood warm at 40 °C can grow legionella; heat it to 60 °C before you shower, and mind scalding. In frost a valve may empty the boiler by itself.",
	"Take a break of 15 minutes after two hours at the wheel.",
	"The vehicle's handbook, local rules and licensed people come before this plan.",
}

// moneyCaution says what typical amounts are worth in another currency; "" in euros.
func moneyCaution(t trip.Trip) string {
	if t.Currency == trip.TypicalCurrency {
		return ""
	}
	var typical []string
	for _, k := range t.Vehicle.Tanks {
		if _, own := t.Prices[k.ID]; own {
			continue
		}
		if v, ok := t.Price(k.ID); ok {
			typical = append(typical, fmt.Sprintf("%s %.2f %s/%s", k.Name, v, t.Currency, k.Unit))
		}
	}
	typical = append(typical, fmt.Sprintf("a night %.0f to %.0f %s", trip.PlainStay.Fee, trip.SiteStay.Fee, t.Currency))
	return fmt.Sprintf("All sums are in %[1]s. trip.Where neither the data nor you say a price in %[1]s, a typical one in %[2]s counts with the same number (%[3]s): say your own prices. So do an hour's worth, the most for a night and what the hire agreement charges.",
		t.Currency, trip.TypicalCurrency, strings.Join(typical, ", "))
}

// cautions are those of this trip as a whole.
func (b reader) cautions() []string {
	var out []string
	add := func(texts ...string) {
		for _, text := range texts {
			if text != "" {
				out = append(out, text)
			}
		}
	}
	add(b.Apart)
	if b.Weight != nil {
		add(b.Weight.Text)
	}
	add(b.Notes...)
	add(moneyCaution(b.Trip), life.MassSays(b.Trip.Vehicle.MassKg))
	for _, r := range b.Trip.Round {
		add(fmt.Sprintf("This vehicle does not go by %s: the route goes round it.", r))
	}
	add(b.Course.Cautions...)
	if b.Roads != nil {
		add(b.dry()...)
	}
	for _, f := range b.Axis.Ferries {
		add(b.onBoard(f.Crossing))
	}
	return out
}
